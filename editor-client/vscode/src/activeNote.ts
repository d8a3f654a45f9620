import * as vscode from 'vscode';
import { sayServerIsMissing } from './server.js';

/** The note in front, or one that is in sight; null, with a word to the user, when there is none. */
export function activeNote(): vscode.TextEditor | null {
  const isNote = (editor: vscode.TextEditor | undefined): editor is vscode.TextEditor => editor?.document.languageId === 'hnote';
  const active = vscode.window.activeTextEditor;
  if (isNote(active)) {
    return active;
  }
  const seen = vscode.window.visibleTextEditors.find(isNote);
  if (seen === undefined) {
    void vscode.window.showInformationMessage('Open a health note first (a file that ends in .hnote), or make one with "Health Notes: New note".');
  }
  return seen ?? null;
}

/** The program, and the path of the note in front, saved; null, with a word to the user, when one of them is missing. */
export async function programAndNote(program: string | null): Promise<{ readonly program: string; readonly path: string } | null> {
  if (program === null) {
    await sayServerIsMissing();
    return null;
  }
  const editor = activeNote();
  const path = editor === null ? null : await onDisk(editor.document);
  return path === null ? null : { program, path };
}

/** Saves the note so that a program can read it, where its owner says when it was never saved; null when it is on no disk. */
async function onDisk(note: vscode.TextDocument): Promise<string | null> {
  const saved = note.uri.scheme === 'file' && !note.isDirty ? note.uri : await vscode.workspace.save(note.uri);
  if (saved?.scheme === 'file') {
    return saved.fsPath;
  }
  void vscode.window.showInformationMessage('Save the note on this computer first.');
  return null;
}
