// A real client library drives the built server on one note with every feature, and its type guards look at each answer.
//   node check.mjs FOLDER-WITH-NODE-MODULES NOTE COMMAND [ARGUMENT...]
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const [folder, notePath, command, ...args] = process.argv.slice(2);
const require = createRequire(join(folder, 'package.json'));
const rpc = require('vscode-jsonrpc/node');
const lsp = require('vscode-languageserver-protocol');
const types = require('vscode-languageserver-types');

const server = spawn(command, args, { stdio: ['pipe', 'pipe', 'inherit'] });
const connection = rpc.createMessageConnection(new rpc.StreamMessageReader(server.stdout), new rpc.StreamMessageWriter(server.stdin));
const published = [];
connection.onNotification('textDocument/publishDiagnostics', (said) => published.push(said));
connection.onRequest('workspace/configuration', (asked) => asked.items.map(() => null));
connection.onRequest('client/registerCapability', () => null);
connection.onRequest('window/workDoneProgress/create', () => null);
connection.listen();

let checked = 0;
function hold(what, good, value) {
  checked++;
  if (!good) throw new Error(`${what} is not what the specification says: ${JSON.stringify(value)?.slice(0, 600)}`);
}
function each(what, values, guard, least = 1) {
  hold(`${what}: a list`, Array.isArray(values) && values.length >= least, values);
  values.forEach((value) => hold(what, guard(value), value));
}

// The library has no guard for this one; its parts have.
function isCompletionItem(item) {
  return typeof item.label === 'string' && (item.kind === undefined || (item.kind >= 1 && item.kind <= 25))
    && (item.textEdit === undefined || types.TextEdit.is(item.textEdit) || types.InsertReplaceEdit.is(item.textEdit))
    && (item.documentation === undefined || typeof item.documentation === 'string' || types.MarkupContent.is(item.documentation));
}

const text = readFileSync(notePath, 'utf8');
const lines = text.split('\n');
const uri = 'file:///notes/type-guards.hnote';
const textDocument = { uri };
const whole = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
function at(words, plus = 1) {
  const line = lines.findIndex((one) => one.includes(words));
  if (line < 0) throw new Error(`there is no ${words} in the note`);
  return { line, character: lines[line].indexOf(words) + plus };
}

const hello = await connection.sendRequest('initialize', {
  processId: process.pid, rootUri: null, workspaceFolders: null,
  capabilities: {
    general: { positionEncodings: ['utf-16'] },
    workspace: { workspaceEdit: { documentChanges: true }, configuration: true },
    textDocument: {
      completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
      hover: { contentFormat: ['markdown'] },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['', 'quickfix', 'refactor', 'source'] } } },
      publishDiagnostics: { relatedInformation: true, tagSupport: { valueSet: [1, 2] } },
      rename: { prepareSupport: true },
      semanticTokens: { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
    },
  },
});
const can = hello.capabilities;
await connection.sendNotification('initialized', {});
await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'hnote', version: 1, text } });

const report = await connection.sendRequest('textDocument/diagnostic', { textDocument });
hold('a full report', report.kind === lsp.DocumentDiagnosticReportKind.Full, report);
each('Diagnostic', report.items, types.Diagnostic.is);
hold('DiagnosticRelatedInformation', report.items.flatMap((one) => one.relatedInformation ?? []).every(types.DiagnosticRelatedInformation.is), report);

const completion = await connection.sendRequest('textDocument/completion', { textDocument, position: at('gums pin', 7), context: { triggerKind: 1 } });
hold('CompletionList', typeof completion.isIncomplete === 'boolean', completion);
each('CompletionItem', completion.items, isCompletionItem);
hold('a resolved CompletionItem', isCompletionItem(await connection.sendRequest('completionItem/resolve', completion.items[0])), completion.items[0]);
each('TextEdit of a CompletionItem', completion.items.map((item) => item.textEdit), types.TextEdit.is);

const hover = await connection.sendRequest('textDocument/hover', { textDocument, position: at('hr   18') });
hold('Hover', types.Hover.is(hover) && types.MarkupContent.is(hover.contents), hover);
each('InlayHint', await connection.sendRequest('textDocument/inlayHint', { textDocument, range: whole }), types.InlayHint.is);

const wrong = at('gumz');
const actions = await connection.sendRequest('textDocument/codeAction', { textDocument, range: { start: wrong, end: wrong }, context: { diagnostics: report.items.filter((one) => one.range.start.line === wrong.line) } });
each('CodeAction', actions, types.CodeAction.is);
const resolved = actions[0].edit ? actions[0] : await connection.sendRequest('codeAction/resolve', actions[0]);
hold('WorkspaceEdit', types.WorkspaceEdit.is(resolved.edit), resolved);

const definition = await connection.sendRequest('textDocument/definition', { textDocument, position: at('@low 12') });
each('Location of a definition', [definition].flat(), types.Location.is);
each('Location', await connection.sendRequest('textDocument/references', { textDocument, position: at('@low 12'), context: { includeDeclaration: true } }), types.Location.is, 2);
each('DocumentHighlight', await connection.sendRequest('textDocument/documentHighlight', { textDocument, position: at('@low 12') }), types.DocumentHighlight.is, 2);
const prepared = await connection.sendRequest('textDocument/prepareRename', { textDocument, position: at('@low 12') });
hold('prepareRename', types.Range.is(prepared.range ?? prepared), prepared);
const renamed = await connection.sendRequest('textDocument/rename', { textDocument, position: at('@low 12'), newName: 'deep' });
hold('WorkspaceEdit of a rename', types.WorkspaceEdit.is(renamed), renamed);

each('DocumentSymbol', await connection.sendRequest('textDocument/documentSymbol', { textDocument }), (one) => types.DocumentSymbol.is(one));
each('FoldingRange', await connection.sendRequest('textDocument/foldingRange', { textDocument }), types.FoldingRange.is);
each('SelectionRange', await connection.sendRequest('textDocument/selectionRange', { textDocument, positions: [at('hr   18')] }), types.SelectionRange.is);
each('workspace symbol', await connection.sendRequest('workspace/symbol', { query: '' }), (one) => typeof one.name === 'string' && one.kind >= 1 && one.kind <= 26 && (types.Location.is(one.location) || typeof one.location.uri === 'string'));
const options = { tabSize: 2, insertSpaces: true };
each('TextEdit', await connection.sendRequest('textDocument/formatting', { textDocument, options }), types.TextEdit.is);
each('TextEdit of a range', await connection.sendRequest('textDocument/rangeFormatting', { textDocument, range: whole, options }), types.TextEdit.is);
const typed = await connection.sendRequest('textDocument/onTypeFormatting', { textDocument, position: { line: at('2026-11-20').line + 1, character: 0 }, ch: '\n', options });
each('TextEdit after a key', typed ?? [], types.TextEdit.is, 0);
const tokens = await connection.sendRequest('textDocument/semanticTokens/full', { textDocument });
hold('SemanticTokens', types.SemanticTokens.is(tokens) && tokens.data.length % 5 === 0 && tokens.data.length > 0, tokens);
hold('SemanticTokens of a range', types.SemanticTokens.is(await connection.sendRequest('textDocument/semanticTokens/range', { textDocument, range: whole })));
const delta = await connection.sendRequest('textDocument/semanticTokens/full/delta', { textDocument, previousResultId: tokens.resultId });
hold('SemanticTokensDelta', Array.isArray(delta.edits) || types.SemanticTokens.is(delta), delta);
each('DocumentLink', await connection.sendRequest('textDocument/documentLink', { textDocument }), types.DocumentLink.is);
each('CodeLens', await connection.sendRequest('textDocument/codeLens', { textDocument }), types.CodeLens.is);
hold('executeCommandProvider', Array.isArray(can.executeCommandProvider.commands) && can.executeCommandProvider.commands.length > 0, can.executeCommandProvider);

await connection.sendRequest('shutdown');
const ended = new Promise((resolve) => server.once('exit', resolve));
await connection.sendNotification('exit');
const code = await ended;
hold('exit code', code === 0, code);
hold('PublishDiagnosticsParams', published.length > 0 && published.every((said) => said.uri === uri && said.diagnostics.every(types.Diagnostic.is)), published);
console.log(`${checked} messages are what the specification says`);
process.exit(0);
