import * as vscode from 'vscode';
import { done, isThere } from './activeNote.js';
import { askInTurn, type Question } from './ask.js';
import type { Host } from './host.js';
import { fileNameOf, starterNote } from './plain/starter.js';
import { today } from './today.js';

const name: Question = {
  placeholder: 'What is your pet called? Type its name, then press Enter.',
  choices: (typed) => [{ label: typed.trim() === '' ? 'Type the name of your pet' : typed.trim(), value: typed.trim(), alwaysShow: true }],
};
const species: Question = { placeholder: 'Dog or cat?', choices: () => [{ label: 'Dog', value: 'dog' }, { label: 'Cat', value: 'cat' }] };

/** A first note, by two questions, and the sample to play in. */
export function registerNewNote(context: vscode.ExtensionContext, host: Host): vscode.Disposable[] {
  return [
    vscode.commands.registerCommand('hnote.newNote', () => newNote(host)),
    vscode.commands.registerCommand('hnote.newFile', () => newNote(host)),
    vscode.commands.registerCommand('hnote.openSample', () => openSample(context)),
    vscode.commands.registerCommand('hnote.cautionsRead', () => done('read')),
  ];
}

async function newNote(host: Host): Promise<void> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  const where: Question = { placeholder: 'In which folder?', choices: () => folders.map((folder) => ({ label: folder.name, description: folder.uri.fsPath, value: folder.uri.toString() })) };
  const answers = await askInTurn('New health note', folders.length > 1 ? [name, species, where] : [name, species]);
  if (answers === null) {
    return;
  }
  const [pet, kind, chosen] = answers as [string, 'dog' | 'cat', string | undefined];
  const folder = chosen === undefined ? folders[0]?.uri : vscode.Uri.parse(chosen);
  const text = starterNote(pet, kind, today());
  const editor = folder === undefined ? await withoutFolder(host, pet, text) : await inFolder(folder, pet, text);
  const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
  editor.selection = new vscode.Selection(end, end);
  await done('note');
}

/** Named after the pet; it is written to the folder when it is first saved. */
async function inFolder(folder: vscode.Uri, pet: string, text: string): Promise<vscode.TextEditor> {
  const note = await vscode.workspace.openTextDocument((await freeName(folder, pet)).with({ scheme: 'untitled' }));
  const editor = await vscode.window.showTextDocument(note, { preview: false });
  await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), text));
  return editor;
}

/** Without a folder its owner chooses the place; a note for which none was chosen has no path, so that saving it asks again. */
async function withoutFolder(host: Host, pet: string, text: string): Promise<vscode.TextEditor> {
  const place = await vscode.window.showSaveDialog({
    title: `Where to keep the note about ${pet}`,
    saveLabel: 'Keep it here',
    filters: { 'Health note': ['hnote'] },
    ...(host.home === undefined ? {} : { defaultUri: await freeName(host.home, pet) }),
  });
  if (place !== undefined) {
    try {
      if (await isThere(place)) {
        throw new Error('a file of that name exists');
      }
      await vscode.workspace.fs.writeFile(place, new TextEncoder().encode(text));
      return await vscode.window.showTextDocument(place, { preview: false });
    } catch (problem) {
      void vscode.window.showWarningMessage(`The note is open, but not saved: ${problem instanceof Error ? problem.message : String(problem)}. Save it under another name.`);
    }
  }
  return vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'hnote', content: text }), { preview: false });
}

/** Where the note will be saved: under the pet's name, unless that is taken. */
async function freeName(folder: vscode.Uri, pet: string): Promise<vscode.Uri> {
  for (let number = 1; ; number++) {
    const file = vscode.Uri.joinPath(folder, fileNameOf(pet, number));
    const isOpen = vscode.workspace.textDocuments.some((note) => note.uri.path === file.path);
    if (!isOpen && !(await isThere(file))) {
      return file;
    }
  }
}

/** An invented puppy, in a tab of its own that is on no disk. */
async function openSample(context: vscode.ExtensionContext): Promise<void> {
  const sample = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(context.extensionUri, 'dist', 'sample.hnote'));
  await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'hnote', content: new TextDecoder().decode(sample) }), { preview: false });
}
