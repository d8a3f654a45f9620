import * as vscode from 'vscode';

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

/** Saves the note so that a program can read it; false when it is on no disk, or was not saved. */
export async function onDisk(editor: vscode.TextEditor): Promise<boolean> {
  if (editor.document.uri.scheme !== 'file' || editor.document.isDirty) {
    if (!(await editor.document.save())) {
      void vscode.window.showInformationMessage('Save the note first.');
      return false;
    }
  }
  return editor.document.uri.scheme === 'file';
}
