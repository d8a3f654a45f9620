import type * as vscode from 'vscode';
import { startExtension, stopExtension } from './main.js';
import { computer } from './computer.js';

/** Called by an editor on a computer, when a note is opened or a command is used. */
export const activate = (context: vscode.ExtensionContext): Promise<void> => startExtension(context, computer(context));
export const deactivate = stopExtension;
