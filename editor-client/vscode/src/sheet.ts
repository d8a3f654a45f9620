import * as fs from 'node:fs/promises';
import * as os from 'node:os';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { activeNote, onDisk } from './activeNote.js';
import { runHnote } from './run.js';
import { sayServerIsMissing } from './server.js';

/** This pet's blank check sheet, made by the server's program and opened in the browser, where it is printed. */
export function registerSheet(server: () => string | null): vscode.Disposable {
  return vscode.commands.registerCommand('healthNotes.printSheet', async () => {
    const program = server();
    const editor = activeNote();
    if (program === null || editor === null) {
      if (program === null) {
        await sayServerIsMissing();
      }
      return;
    }
    if (!(await onDisk(editor))) {
      return;
    }
    const note = editor.document.uri.fsPath;
    // health data: in a folder that only this user can read
    const folder = await fs.mkdtemp(path.join(os.tmpdir(), 'hnote-sheet-'));
    const sheet = path.join(folder, `${path.basename(note, '.hnote')}-sheet.html`);
    try {
      await runHnote(program, ['sheet', note, '--out', sheet]);
    } catch (problem) {
      await vscode.window.showErrorMessage(`The sheet was not made: ${problem instanceof Error ? problem.message : String(problem)}`);
      return;
    }
    await vscode.env.openExternal(vscode.Uri.file(sheet));
    void vscode.window.showInformationMessage(`The sheet is open in your browser. Print it at 100 % (actual size). It is in ${sheet}`);
  });
}
