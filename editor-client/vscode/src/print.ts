import * as vscode from 'vscode';
import type { NoteFinder } from './activeNote.js';
import { askServer, type Client, type Host } from './host.js';

/** What can be printed: this pet's blank check sheet, and the page for the clinic. The server makes both from the note as it stands. */
const papers = [
  { command: 'hnote.printSheet', view: 'sheet', name: 'sheet', advice: 'Print it at 100 % (actual size): it has a ruler.' },
  { command: 'hnote.printPage', view: undefined, name: 'page', advice: 'Print it there, or take the file with you.' },
] as const;

const readers = [
  { label: 'For the clinic', view: undefined, reader: 'vet', end: '' },
  { label: 'For the owner', view: 'owner', reader: 'owner', end: '-owner' },
  { label: 'To share', view: 'share', description: 'without names, contacts and your own words', reader: 'share', end: '-share' },
] as const;

/** The paper is opened in the browser, where it is printed. */
export function registerPrinting(client: Client, host: Host, notes: NoteFinder): vscode.Disposable[] {
  return [
    ...papers.map((paper) => vscode.commands.registerCommand(paper.command, () => print(client, host, notes, paper))),
    vscode.commands.registerCommand('hnote.savePage', () => savePage(client, host, notes)),
  ];
}

const baseOf = (note: vscode.TextDocument): string => (note.uri.path.split('/').pop() ?? 'note').replace(/\.hnote$/, '');

/** A page of the note as it stands in the editor; null, after a word to the user, where none is made. */
async function pageOf(client: Client, note: vscode.TextDocument, view: string | undefined): Promise<string | null> {
  const page = await askServer<{ html: string }>(client, 'healthNotes/page', { uri: client()?.code2ProtocolConverter.asUri(note.uri), view });
  if (page === null) {
    void vscode.window.showErrorMessage('The page was not made: the checker does not run.');
  }
  return page?.html ?? null;
}

/** The page as a file of its owner's choosing, for whom it is to be. */
async function savePage(client: Client, host: Host, notes: NoteFinder): Promise<void> {
  const editor = await notes.find();
  const chosen = editor === null ? undefined : await vscode.window.showQuickPick(readers, { title: 'Who is the page for?', ignoreFocusOut: true });
  if (editor === null || chosen === undefined) {
    return;
  }
  // other kinds of file than the page itself are made by the program, which reads the note from the disk
  const program = host.program();
  const onDisk = program === null ? undefined : editor.document.uri.scheme === 'file' && !editor.document.isDirty ? editor.document.uri : await vscode.workspace.save(editor.document.uri);
  const others = program === null || onDisk?.scheme !== 'file' ? {} : { 'PDF': ['pdf'], 'Markdown': ['md'], 'Five lines of text': ['txt'] };
  const place = await vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.joinPath(editor.document.uri.with(editor.document.uri.scheme === 'untitled' ? { scheme: 'file' } : {}), '..', `${baseOf(editor.document)}${chosen.end}.html`),
    filters: { 'Page': ['html'], ...others },
  });
  if (place === undefined) {
    return;
  }
  try {
    if (program !== null && onDisk?.scheme === 'file' && !place.path.endsWith('.html')) {
      await host.run(program, ['page', onDisk.fsPath, '--for', chosen.reader, '--out', place.fsPath]);
    } else {
      const html = await pageOf(client, editor.document, chosen.view);
      if (html === null) {
        return;
      }
      await vscode.workspace.fs.writeFile(place, new TextEncoder().encode(html));
    }
    void vscode.window.showInformationMessage(`The page is in ${place.fsPath}`);
  } catch (problem) {
    await vscode.window.showErrorMessage(`The page was not made: ${problem instanceof Error ? problem.message : String(problem)}`);
  }
}

async function print(client: Client, host: Host, notes: NoteFinder, paper: (typeof papers)[number]): Promise<void> {
  const editor = await notes.find();
  const html = editor === null ? null : await pageOf(client, editor.document, paper.view);
  const file = editor === null || html === null ? null : await host.keep(`${baseOf(editor.document)}-${paper.name}.html`, html);
  if (file === null) {
    return;
  }
  // where the note is on another computer, or this editor is a page in a browser, no program here can open the file
  const here = vscode.env.remoteName === undefined && vscode.env.uiKind === vscode.UIKind.Desktop;
  const opened = here && (await vscode.env.openExternal(file));
  const told = opened ? `The ${paper.name} is open in your browser.` : `The ${paper.name} is made: open it in a browser.`;
  const copy = 'Copy its path';
  if ((await vscode.window.showInformationMessage(`${told} ${paper.advice} It is in ${file.fsPath}`, copy)) === copy) {
    await vscode.env.clipboard.writeText(file.fsPath);
  }
}
