import * as vscode from 'vscode';
import type { Middleware } from 'vscode-languageclient';
import { askInTurn } from './ask.js';
import { acceptDates, acceptedLine } from './plain/accept.js';
import { today } from './today.js';

const explain = 'hnote.explain';
const accept = 'hnote.accept';

/** What can be done with a finding: its rule explained, and the finding accepted for a while. The server knows the lines, and the text of a rule. */
export function registerFindings(): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand(explain, async (rule: unknown) => {
      if (typeof rule === 'string' && /^[a-z-]+$/.test(rule)) {
        await vscode.commands.executeCommand('markdown.showPreviewToSide', vscode.Uri.from({ scheme: 'hnote', path: `/rules/${rule}.md` }));
      }
    }),
    vscode.commands.registerCommand(accept, (edit: unknown) => (edit instanceof vscode.WorkspaceEdit ? acceptUntil(edit) : undefined)),
  ];
}

/** The findings' rules as links, and what can be done with a finding beside the server's own fixes. */
export const findingsMiddleware = (told: (note: vscode.Uri) => void): Middleware => ({
  provideDiagnostics: async (note, previous, token, next) => {
    const report = await next(note, previous, token);
    if (report !== undefined && report !== null) {
      for (const one of 'items' in report ? report.items : []) {
        const rule = ruleOf(one);
        if (rule !== null) {
          one.code = { value: rule, target: vscode.Uri.parse(`command:${explain}?${encodeURIComponent(JSON.stringify([rule]))}`) };
        }
      }
      // after the editor has taken them over
      setTimeout(() => told(note instanceof vscode.Uri ? note : note.uri));
    }
    return report;
  },
  provideCodeActions: async (note, range, context, token, next) => {
    const offered = (await next(note, range, context, token)) ?? [];
    const rules = [...new Set(context.diagnostics.map(ruleOf).filter((rule) => rule !== null))];
    return [
      ...offered.map((one) => ('edit' in one && one.edit !== undefined && one.title.startsWith('Write: accept ') ? accepting(one) : one)),
      ...rules.map((rule) => explaining(rule)),
    ];
  },
  executeCommand: async (command: string, args: unknown[], next) => {
    const done: unknown = await next(command, args);
    if (command === 'hnote.nextPart' && typeof done === 'string') {
      await vscode.commands.executeCommand('editor.action.triggerSuggest');
    }
    return done;
  },
});

function ruleOf(finding: vscode.Diagnostic): string | null {
  const code = typeof finding.code === 'object' ? finding.code.value : finding.code;
  return finding.source === 'hnote' && typeof code === 'string' && !['not-checked', 'more-findings'].includes(code) ? code : null;
}

function explaining(rule: string): vscode.CodeAction {
  const action = new vscode.CodeAction(`Explain this: ${rule}`, vscode.CodeActionKind.QuickFix);
  action.command = { command: explain, title: action.title, arguments: [rule] };
  return action;
}

function accepting(one: vscode.CodeAction): vscode.CodeAction {
  const action = new vscode.CodeAction(one.title.replace(/^Write: accept (.*) until .*$/, 'Accept $1 until\u2026'), one.kind);
  action.command = { command: accept, title: action.title, arguments: [one.edit] };
  return action;
}

async function acceptUntil(edit: vscode.WorkspaceEdit): Promise<void> {
  const answers = await askInTurn('Accept this finding', [
    { placeholder: 'Until when? Choose, or type a day such as 2027-03-01.', choices: (typed) => acceptDates(today(), typed).map(({ label, date }) => ({ label, description: date, value: date, alwaysShow: true })) },
    { placeholder: 'Why? For example: the vet has seen it.', choices: (typed) => [{ label: typed.trim() === '' ? 'Type why' : typed.trim(), value: typed.trim(), alwaysShow: true }] },
  ]);
  if (answers === null) {
    return;
  }
  const [date, why] = answers as [string, string];
  const whole = new vscode.WorkspaceEdit();
  for (const [uri, edits] of edit.entries()) {
    whole.set(uri, edits.map((one) => new vscode.TextEdit(one.range, acceptedLine(one.newText, date, why))));
  }
  await vscode.workspace.applyEdit(whole);
}
