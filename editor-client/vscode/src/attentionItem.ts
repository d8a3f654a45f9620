import * as vscode from 'vscode';
import { attentionOf } from './plain/attention.js';

/** The status bar's word on the note in front: what needs attention, by strength. */
export class AttentionItem implements vscode.Disposable {
  private readonly item = vscode.window.createStatusBarItem('healthNotes.attention', vscode.StatusBarAlignment.Left, 50);
  private readonly listeners: vscode.Disposable[];

  constructor() {
    this.item.name = 'Health Notes: what needs attention';
    this.item.command = 'workbench.actions.view.problems';
    this.listeners = [
      vscode.languages.onDidChangeDiagnostics(() => this.show()),
      vscode.window.onDidChangeActiveTextEditor(() => this.show()),
    ];
    this.show();
  }

  dispose(): void {
    vscode.Disposable.from(...this.listeners, this.item).dispose();
  }

  private show(): void {
    // in front of a page or a count no text is active: then the word on the note that is open beside it stays
    const note = vscode.window.activeTextEditor?.document ?? vscode.window.visibleTextEditors.map((editor) => editor.document).find((one) => one.languageId === 'hnote');
    if (note?.languageId !== 'hnote') {
      this.item.hide();
      return;
    }
    const found = attentionOf(vscode.languages.getDiagnostics(note.uri).filter((one) => one.source === 'hnote'));
    this.item.text = found.text;
    this.item.tooltip = found.tooltip;
    this.item.backgroundColor = found.strongest === 'none' ? undefined : new vscode.ThemeColor(`statusBarItem.${found.strongest}Background`);
    this.item.show();
  }
}
