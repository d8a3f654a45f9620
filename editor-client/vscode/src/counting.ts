import * as vscode from 'vscode';
import { done, type NoteFinder } from './activeNote.js';
import { placeObservation } from './plain/placing.js';
import { newNonce } from './plain/nonce.js';
import { policyFor } from './plain/policy.js';
import { today } from './today.js';

/** Counting by a key, and the count written as it was counted. */
export function registerCounting(context: vscode.ExtensionContext, notes: NoteFinder): vscode.Disposable {
  return vscode.commands.registerCommand('hnote.countBeats', async () => {
    const editor = await notes.find();
    if (editor === null) {
      return;
    }
    const panel = vscode.window.createWebviewPanel('hnote.count', 'Count', vscode.ViewColumn.Active, {
      enableScripts: true,
      localResourceRoots: [],
    });
    panel.webview.onDidReceiveMessage(async (message: { kind: 'write'; line: string } | { kind: 'close' } | { kind: 'usual'; word: string; state: string }) => {
      if (message.kind === 'usual') {
        await panel.webview.postMessage({ ...message, text: await usualOf(editor.document, message.word, message.state) });
        return;
      }
      panel.dispose();
      if (message.kind === 'write' && /^(hr|rr) \d{1,3}\/\d{2}s( asleep| rest)?$/.test(message.line)) {
        await write(editor.document, editor.selection.active.line, message.line);
      }
    });
    const script = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(context.extensionUri, 'dist', 'webview', 'count.js'));
    panel.webview.html = view(new TextDecoder().decode(script));
  });
}

/** What the server knows of the pet's usual rate, in a few words; empty where it knows nothing. */
async function usualOf(note: vscode.TextDocument, word: string, state: string): Promise<string> {
  return vscode.commands.executeCommand<string | null>('hnote.usual', note.uri.toString(), word, state).then((text) => text ?? '', () => '');
}

async function write(note: vscode.TextDocument, cursor: number, observation: string): Promise<void> {
  const lines = note.getText().split(/\r?\n/);
  const placed = placeObservation(lines, cursor, observation, today());
  const editor = await vscode.window.showTextDocument(note);
  await editor.edit((edit) => {
    if (placed.line < 0) {
      edit.insert(new vscode.Position(0, 0), placed.text);
    } else if (placed.fills) {
      edit.replace(note.lineAt(placed.line).range, placed.text);
    } else {
      edit.insert(note.lineAt(placed.line).range.end, `\n${placed.text}`);
    }
  });
  const last = Math.max(0, placed.line) + (placed.fills || placed.line < 0 ? 0 : placed.text.split('\n').length);
  const end = note.lineAt(Math.min(last, note.lineCount - 1)).range.end;
  editor.selection = new vscode.Selection(end, end);
  editor.revealRange(new vscode.Range(end, end));
  await done('count');
}

function view(script: string): string {
  const nonce = newNonce();
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyFor(nonce, null)}">
<title>Count</title>
<style nonce="${nonce}">
body { font-family: var(--vscode-font-family); color: var(--vscode-foreground); max-width: 34rem; margin: 2rem auto; padding: 0 1rem; }
h1 { font-size: 1.3rem; font-weight: 600; margin: 0 0 1rem; }
.row { display: flex; flex-wrap: wrap; gap: .5rem; margin: .75rem 0; align-items: center; }
button { font: inherit; padding: .45rem .9rem; border-radius: 4px; border: 1px solid var(--vscode-button-border, var(--vscode-contrastBorder, transparent));
  background: var(--vscode-button-secondaryBackground); color: var(--vscode-button-secondaryForeground); cursor: pointer; }
button[aria-pressed="true"], #write { background: var(--vscode-button-background); color: var(--vscode-button-foreground); }
button:focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 2px; }
button:disabled { cursor: default; }
#tap { display: block; width: 100%; min-height: 9rem; font-size: 3rem; font-variant-numeric: tabular-nums; }
#left { min-height: 1.5em; font-size: 1.1rem; }
#line { font-family: var(--vscode-editor-font-family); font-size: 1.2rem; }
.small { color: var(--vscode-descriptionForeground); }
[hidden] { display: none; }
</style>
</head>
<body>
<h1>Count breaths or heart beats</h1>
<div class="row" id="kinds" role="group" aria-label="What you count"></div>
<div class="row" id="times" role="group" aria-label="For how long"></div>
<p id="left" role="status"></p>
<button id="tap"></button>
<div class="row" id="after" hidden>
<code id="line"></code> <span id="rate"></span>
<button id="write">Write it down</button>
<button id="again">Count again</button>
</div>
<p id="usual" class="small" role="status"></p>
<div class="row">
<button id="undo">Take one back</button>
<label><input type="checkbox" id="sound"> sound</label>
<label><input type="checkbox" id="buzz"> vibration</label>
</div>
<p class="small">Space: start, then one for each. Backspace: take one back. Enter: write it down. Escape: stop. A breath is one rise and fall of the chest.
Stop when the pet struggles. Do not hold one that breathes hard: watch it, and phone the clinic.</p>
<script nonce="${nonce}">${script.replaceAll('</script', '<\\/script')}</script>
</body>
</html>`;
}
