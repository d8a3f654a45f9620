import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { done, type NoteFinder } from './activeNote.js';
import { today } from './today.js';

/** Today's check at the end of the note; the server knows what to put in it. */
export function registerStartCheck(client: () => LanguageClient | undefined, notes: NoteFinder): vscode.Disposable {
  return vscode.commands.registerCommand('healthNotes.startCheck', async () => {
    const editor = await notes.find();
    if (editor === null) {
      return;
    }
    const running = client();
    if (running === undefined) {
      const end = new vscode.Position(editor.document.lineCount, 0);
      await editor.insertSnippet(new vscode.SnippetString(`\n${today()} check\n  $0\n`), end);
    } else {
      await running.sendRequest('workspace/executeCommand', { command: 'hnote.addCheckToday', arguments: [running.code2ProtocolConverter.asUri(editor.document.uri)] });
    }
    await done('check');
  });
}
