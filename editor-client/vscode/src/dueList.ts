import * as vscode from 'vscode';
import type { NoteFinder } from './activeNote.js';
import { askServer, type Client } from './host.js';

/** One thing due, as the server gives it; its line counts from 0. */
export interface DueItem { readonly line: number; readonly what: string; readonly when: string }

/** What is due by a note, most pressing first; null where the server does not run. */
export const dueOf = async (client: Client, uri: vscode.Uri, text?: string): Promise<readonly DueItem[] | null> =>
  (await askServer<{ due: DueItem[] }>(client, 'healthNotes/due', { uri: client()?.code2ProtocolConverter.asUri(uri), text }))?.due ?? null;

/** What is due by the note in front; choosing one goes to its line. */
export function registerDue(client: Client, notes: NoteFinder): vscode.Disposable {
  return vscode.commands.registerCommand('hnote.whatIsDue', async () => {
    const editor = await notes.find();
    if (editor === null) {
      return;
    }
    const items = await dueOf(client, editor.document.uri);
    if (items === null || items.length === 0) {
      void vscode.window.showInformationMessage(items === null ? 'What is due could not be listed: the checker does not run.' : 'Nothing is due by what is written down.');
      return;
    }
    const chosen = await vscode.window.showQuickPick(
      items.map((item) => ({ label: item.what, description: item.when, item })),
      { title: 'What is due', placeHolder: 'Choose one to go to its line' },
    );
    if (chosen !== undefined) {
      await vscode.window.showTextDocument(editor.document, { selection: new vscode.Range(chosen.item.line, 0, chosen.item.line, 0) });
    }
  });
}
