import * as vscode from 'vscode';
import { State } from 'vscode-languageclient';
import type { Client, Host } from './host.js';

/** Which checker runs, among the details of the language in the status bar; the log is a click away. */
export function showLanguageStatus(client: Client, host: Host): { readonly item: vscode.Disposable; show(): void } {
  const item = vscode.languages.createLanguageStatusItem('hnote.checker', { language: 'hnote' });
  item.name = 'Health Notes';
  item.command = { command: 'hnote.showLog', title: 'Show log' };
  const show = (): void => {
    const state = client()?.state ?? State.Stopped;
    item.busy = state === State.Starting;
    item.severity = state === State.Stopped ? vscode.LanguageStatusSeverity.Error : vscode.LanguageStatusSeverity.Information;
    item.text = state === State.Stopped ? 'The checker does not run' : host.program() === null ? 'Checked by WebAssembly' : 'Checked by hnote';
    item.detail = host.program() ?? 'slower; without pictures beside a note, and without PDF';
  };
  show();
  return { item, show };
}
