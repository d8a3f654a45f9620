import * as vscode from 'vscode';
import { programAndNote, type NoteFinder } from './activeNote.js';
import { readDue, whenOf, type DueItem } from './plain/due.js';
import { runHnote } from './run.js';

/** What is due by the note in front; choosing one goes to its line. */
export function registerDue(server: () => string | null, notes: NoteFinder): vscode.Disposable {
  return vscode.commands.registerCommand('healthNotes.whatIsDue', async () => {
    const found = await programAndNote(server(), notes);
    if (found === null) {
      return;
    }
    let items: DueItem[];
    try {
      items = readDue(await runHnote(found.program, ['due', found.path, '--json']));
    } catch (problem) {
      await vscode.window.showErrorMessage(`What is due could not be listed: ${problem instanceof Error ? problem.message : String(problem)}`);
      return;
    }
    if (items.length === 0) {
      void vscode.window.showInformationMessage('Nothing is due by what is written down.');
      return;
    }
    const chosen = await vscode.window.showQuickPick(
      items.map((item) => ({ label: item.what, description: whenOf(item), item })),
      { title: 'What is due', placeHolder: 'Choose one to go to its line' },
    );
    if (chosen !== undefined) {
      const line = Math.max(0, chosen.item.line - 1);
      await vscode.window.showTextDocument(vscode.Uri.file(chosen.item.path), { selection: new vscode.Range(line, 0, line, 0) });
    }
  });
}
