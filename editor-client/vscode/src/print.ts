import * as fs from 'node:fs/promises';
import * as os from 'node:os';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { programAndNote, type NoteFinder } from './activeNote.js';
import { runHnote } from './run.js';

/** What can be printed: this pet's blank check sheet, and the page for the clinic. The server's program makes both. */
const papers = [
  { command: 'healthNotes.printSheet', make: 'sheet', name: 'sheet', advice: 'Print it at 100 % (actual size): it has a ruler.' },
  { command: 'healthNotes.printPage', make: 'page', name: 'page', advice: 'Print it there, or take the file with you.' },
] as const;

/** The paper is opened in the browser, where it is printed. */
export function registerPrinting(server: () => string | null, notes: NoteFinder): vscode.Disposable[] {
  return [
    ...papers.map((paper) => vscode.commands.registerCommand(paper.command, () => print(server(), notes, paper))),
    vscode.commands.registerCommand('healthNotes.savePage', () => savePage(server(), notes)),
  ];
}

/** The page as a file of its owner's choosing, for whom it is to be. */
async function savePage(server: string | null, notes: NoteFinder): Promise<void> {
  const found = await programAndNote(server, notes);
  if (found === null) {
    return;
  }
  const readers = [
    { label: 'For the clinic', reader: 'vet', end: '' },
    { label: 'For the owner', reader: 'owner', end: '-owner' },
    { label: 'To share', description: 'without names, contacts and your own words', reader: 'share', end: '-share' },
  ];
  const chosen = await vscode.window.showQuickPick(readers, { title: 'Who is the page for?', ignoreFocusOut: true });
  const place = chosen === undefined ? undefined : await vscode.window.showSaveDialog({
    defaultUri: vscode.Uri.file(found.path.replace(/\.hnote$/, `${chosen.end}.html`)),
    filters: { 'Page': ['html'], 'PDF': ['pdf'], 'Markdown': ['md'], 'Five lines of text': ['txt'] },
  });
  if (chosen === undefined || place === undefined) {
    return;
  }
  try {
    await runHnote(found.program, ['page', found.path, '--for', chosen.reader, '--out', place.fsPath]);
    void vscode.window.showInformationMessage(`The page is in ${place.fsPath}`);
  } catch (problem) {
    await vscode.window.showErrorMessage(`The page was not made: ${problem instanceof Error ? problem.message : String(problem)}`);
  }
}

async function print(server: string | null, notes: NoteFinder, paper: (typeof papers)[number]): Promise<void> {
  const found = await programAndNote(server, notes);
  if (found === null) {
    return;
  }
  const note = found.path;
  // health data: in a folder that only this user can read
  const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'hnote-'));
  const file = path.join(folder, `${path.basename(note, '.hnote')}-${paper.name}.html`);
  try {
    await runHnote(found.program, [paper.make, note, '--out', file]);
  } catch (problem) {
    await vscode.window.showErrorMessage(`The ${paper.name} was not made: ${problem instanceof Error ? problem.message : String(problem)}`);
    return;
  }
  // where the note is on another computer, or this editor is a page in a browser, no program here can open the file
  const here = vscode.env.remoteName === undefined && vscode.env.uiKind === vscode.UIKind.Desktop;
  const opened = here && (await vscode.env.openExternal(vscode.Uri.file(file)));
  const told = opened ? `The ${paper.name} is open in your browser.` : `The ${paper.name} is made: open it in a browser.`;
  const copy = 'Copy its path';
  if ((await vscode.window.showInformationMessage(`${told} ${paper.advice} It is in ${file}`, copy)) === copy) {
    await vscode.env.clipboard.writeText(file);
  }
}
