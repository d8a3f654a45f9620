import * as vscode from 'vscode';
import { attentionOf, unreadAttention, type Reading } from './plain/attention.js';

const pauseBeforeWorse = 1_000;

/** The status bar's word on the note in front: what needs attention, by strength; until the note is read, that it is not. */
export class AttentionItem implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem('hnote.attention', vscode.StatusBarAlignment.Left, 50);
  private readonly listeners: vscode.Disposable[];
  private shown = { note: '', weight: 0 };
  private timer: NodeJS.Timeout | undefined;

  constructor(private readonly readingOf: (note: vscode.TextDocument) => Reading) {
    this.item.name = 'Health Notes: what needs attention';
    this.listeners = [
      vscode.languages.onDidChangeDiagnostics(() => this.show()),
      vscode.window.onDidChangeActiveTextEditor(() => this.show()),
    ];
    this.show();
  }

  dispose(): void {
    clearTimeout(this.timer);
    vscode.Disposable.from(...this.listeners, this.item).dispose();
  }

  /** Says it anew: at once where it gets better, after a second where it gets worse, since half a word may look like a slip. */
  show(settled = false): void {
    clearTimeout(this.timer);
    // in front of a page or a count no text is active: then the word on the note that is open beside it stays
    const note = vscode.window.activeTextEditor?.document ?? vscode.window.visibleTextEditors.map((editor) => editor.document).find((one) => one.languageId === 'hnote');
    if (note?.languageId !== 'hnote') {
      this.item.hide();
      return;
    }
    const reading = this.readingOf(note);
    const found = reading === 'done' ? attentionOf(vscode.languages.getDiagnostics(note.uri).filter((one) => one.source === 'hnote')) : unreadAttention(reading);
    const shown = note.uri.toString();
    if (!settled && this.shown.note === shown && found.weight > this.shown.weight) {
      this.timer = setTimeout(() => this.show(true), pauseBeforeWorse);
      return;
    }
    this.shown = { note: shown, weight: reading === 'done' ? found.weight : Infinity };
    this.item.text = found.text;
    this.item.tooltip = found.tooltip;
    this.item.command = reading === 'none' ? 'hnote.restartServer' : 'workbench.actions.view.problems';
    this.item.backgroundColor = found.strongest === 'none' ? undefined : new vscode.ThemeColor(`statusBarItem.${found.strongest}Background`);
    this.item.show();
  }
}
