import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { activeNote } from './activeNote.js';
import { fileNameOf, starterNote } from './plain/starter.js';
import { today } from './today.js';

/** A first note, by two questions. */
export function registerNewNote(): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand('healthNotes.newNote', newNote),
    vscode.commands.registerCommand('healthNotes.cautionsRead', () => undefined),
  ];
}

/** Today's check at the end of the note; the server knows what to put in it. */
export function registerStartCheck(client: () => LanguageClient | undefined): vscode.Disposable {
  return vscode.commands.registerCommand('healthNotes.startCheck', async () => {
    const editor = activeNote();
    if (editor === null) {
      return;
    }
    const running = client();
    if (running === undefined) {
      const end = new vscode.Position(editor.document.lineCount, 0);
      await editor.insertSnippet(new vscode.SnippetString(`\n${today()} check\n  $0\n`), end);
      return;
    }
    await running.sendRequest('workspace/executeCommand', { command: 'hnote.addCheckToday', arguments: [running.code2ProtocolConverter.asUri(editor.document.uri)] });
  });
}

async function newNote(): Promise<void> {
  const name = await vscode.window.showInputBox({
    title: 'New health note (1 of 2)',
    prompt: 'What is your pet called?',
    validateInput: (text) => (text.trim() === '' ? 'A name is needed.' : null),
    ignoreFocusOut: true,
  });
  if (name === undefined) {
    return;
  }
  const species = await vscode.window.showQuickPick(
    [{ label: 'Dog', species: 'dog' as const }, { label: 'Cat', species: 'cat' as const }],
    { title: 'New health note (2 of 2)', placeHolder: 'Dog or cat?', ignoreFocusOut: true },
  );
  if (species === undefined) {
    return;
  }
  const note = await vscode.workspace.openTextDocument(await freeName(name.trim()));
  const editor = await vscode.window.showTextDocument(note);
  await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), starterNote(name.trim(), species.species, today())));
  const end = note.lineAt(note.lineCount - 1).range.end;
  editor.selection = new vscode.Selection(end, end);
}

/** Where the note will be saved: in the folder that is open, under the pet's name, unless that is taken. */
async function freeName(pet: string): Promise<vscode.Uri> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  for (let number = 1; ; number++) {
    const file = fileNameOf(pet, number);
    const saved = folder === undefined ? null : vscode.Uri.joinPath(folder, file);
    const unsaved = saved?.with({ scheme: 'untitled' }) ?? vscode.Uri.from({ scheme: 'untitled', path: file });
    const isOpen = vscode.workspace.textDocuments.some((note) => note.uri.toString() === unsaved.toString());
    const isThere = saved !== null && (await vscode.workspace.fs.stat(saved).then(() => true, () => false));
    if (!isOpen && !isThere) {
      return unsaved;
    }
  }
}
