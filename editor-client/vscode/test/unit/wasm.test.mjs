// The server as WebAssembly, in a process of its own as a computer without a program runs it, against the program.
import assert from 'node:assert/strict';
import { fork, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

const rpc = createRequire(import.meta.url)('vscode-jsonrpc/node');
const local = (path) => new URL(path, import.meta.url).pathname;
const env = { ...process.env, HNOTE_TODAY: '2026-11-25' };
const [program, ...first] = process.env.HNOTE_BINARY ? [process.env.HNOTE_BINARY] : ['dotnet', local('../../../../server/Cli/bin/Debug/net10.0/hnote.dll')];
const sample = readFileSync(local('../../../../samples/marlow.hnote'), 'utf8');
const rules = 'call-if weight <40kg per vet 2026-01-20\n';

async function said(client, uri, text) {
  client.listen();
  await client.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: { textDocument: { diagnostic: {} } } });
  await client.sendNotification('initialized', {});
  await client.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'hnote', version: 1, text } });
  const { items } = await client.sendRequest('textDocument/diagnostic', { textDocument: { uri } });
  await client.sendRequest('shutdown');
  await client.sendNotification('exit');
  return items;
}

const built = existsSync(local('../../dist/wasm/_framework/dotnet.js'));
test('WebAssembly finds what the program finds', { timeout: 120_000, skip: !built && process.env.HNOTE_E2E !== 'required' && 'not built: bash ../web/build.sh' }, async () => {
  const server = spawn(program, [...first, 'lsp', '--today', env.HNOTE_TODAY], { stdio: ['pipe', 'pipe', 'inherit'] });
  const native = await said(rpc.createMessageConnection(server.stdout, server.stdin), 'file:///notes/a.hnote', sample);
  const start = () => fork(local('../../dist/wasm/node.mjs'), { env, serialization: 'advanced' });
  const child = start();
  const ended = new Promise((resolve) => child.on('exit', resolve));
  const wasm = await said(rpc.createMessageConnection(new rpc.IPCMessageReader(child), new rpc.IPCMessageWriter(child)), 'file:///notes/a.hnote', sample);
  assert.ok(native.length > 0);
  assert.deepEqual(wasm, native);
  assert.equal(await ended, 0);

  // a file of the clinic that is handed over lies above the note
  const other = start();
  other.send({ path: '/c:/pets/our.hnote-rules', bytes: new TextEncoder().encode(rules) });
  const under = await said(rpc.createMessageConnection(new rpc.IPCMessageReader(other), new rpc.IPCMessageWriter(other)), 'file:///c%3A/pets/dogs/a.hnote', 'species dog\n2026-11-25 check\n  weight 38kg\n');
  assert.ok(under.some((one) => one.code === 'call-if' && one.message.includes('40')), under.map((one) => one.message).join('\n'));
});
