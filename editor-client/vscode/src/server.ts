import * as fs from 'node:fs';
import * as vscode from 'vscode';
import { candidates, installCommand } from './plain/serverPlaces.js';

/** The server's program, or null when there is none on this computer. */
export function findServer(context: vscode.ExtensionContext): string | null {
  const setting = vscode.workspace.getConfiguration('healthNotes').get<string>('server.path', '').trim();
  const places = candidates({
    extensionFolder: context.extensionPath,
    platform: process.platform,
    arch: process.arch,
    setting: vscode.workspace.isTrusted ? setting : '',
    path: process.env['PATH'] ?? '',
  });
  return places.find(isProgram) ?? null;
}

/** Says how to get the server; the notes can be written without it. */
export async function sayServerIsMissing(): Promise<void> {
  const copy = 'Copy the command';
  const chosen = await vscode.window.showWarningMessage(
    `Health Notes has no checker for this system yet. You can write, but nothing is checked. To install it, run: ${installCommand} and then "Health Notes: Start the server again".`,
    copy,
    'Open the setting',
  );
  if (chosen === copy) {
    await vscode.env.clipboard.writeText(installCommand);
  } else if (chosen !== undefined) {
    await vscode.commands.executeCommand('workbench.action.openSettings', 'healthNotes.server.path');
  }
}

function isProgram(path: string): boolean {
  try {
    fs.accessSync(path, fs.constants.X_OK);
    return fs.statSync(path).isFile();
  } catch {
    return false;
  }
}
