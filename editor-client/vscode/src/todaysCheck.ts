import * as vscode from 'vscode';
import { done, type NoteFinder } from './activeNote.js';
import type { Client } from './host.js';
import { today } from './today.js';

/** Today's check at the end of the note, and its next part; the server knows what to put in it. */
export function registerCheck(client: Client, notes: NoteFinder): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand('hnote.startCheck', async () => {
      const editor = await notes.find();
      if (editor === null) {
        return;
      }
      if (client() === undefined) {
        const end = new vscode.Position(editor.document.lineCount, 0);
        await editor.insertSnippet(new vscode.SnippetString(`\n${today()} check\n  $0\n`), end);
      } else {
        await ask('hnote.addCheckToday', editor);
      }
      await done('check');
    }),
    vscode.commands.registerCommand('hnote.nextPartOfCheck', async () => {
      const editor = client() === undefined ? null : await notes.find();
      if (editor !== null) {
        await ask('hnote.nextPart', editor, editor.selection.active.line);
      }
    }),
  ];

  async function ask(command: string, editor: vscode.TextEditor, ...more: readonly number[]): Promise<unknown> {
    // the commands are there once the server runs
    await client()?.start();
    return vscode.commands.executeCommand(command, client()!.code2ProtocolConverter.asUri(editor.document.uri), ...more);
  }
}
