// Drives language servers over stdio and prints how long they take, side by side, in one run on one machine.
//   usage: node measure.mjs --servers servers.json [--only NAME,NAME] [--sizes 1000,10000,100000] [--rounds 60]
// A reply counts only when it shows the state of the line that was edited: the edit turns the line wrong, then right
// again, and the clock stops when that line's finding has come, or gone. Servers that push are waited for; servers that
// are pulled are asked after every edit until the answer shows it.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { notes, yaml, json } from './files.mjs';

const options = Object.fromEntries(process.argv.slice(2).join(' ').split('--').filter(Boolean).map(o => o.trim().split(/[ =]/)));
const sizes = (options.sizes ?? '1000,10000,100000').split(',').map(Number);
const rounds = Number(options.rounds ?? 60);
const only = options.only?.split(',');
const servers = JSON.parse(readFileSync(options.servers, 'utf8')).filter(s => !only || only.includes(s.name));
const files = { notes, yaml, json };
const giveUpMs = 120_000;

class Server {
  constructor({ command, args, env }) {
    this.started = performance.now();
    this.process = spawn(command, args, { stdio: ['pipe', 'pipe', 'ignore'], env: { ...process.env, ...env } });
    this.process.stdin.on('error', () => {});
    this.buffer = Buffer.alloc(0);
    this.next = 1;
    this.waiting = new Map();
    this.listeners = [];
    this.process.stdout.on('data', chunk => this.take(chunk));
  }

  take(chunk) {
    this.buffer = this.buffer.length ? Buffer.concat([this.buffer, chunk]) : chunk;
    for (;;) {
      const head = this.buffer.indexOf('\r\n\r\n');
      if (head < 0) return;
      const length = Number(/content-length: *(\d+)/i.exec(this.buffer.toString('latin1', 0, head))[1]);
      if (this.buffer.length < head + 4 + length) return;
      const body = this.buffer.toString('utf8', head + 4, head + 4 + length);
      this.buffer = this.buffer.subarray(head + 4 + length);
      this.received(JSON.parse(body));
    }
  }

  received(message) {
    if (message.method && message.id !== undefined) {
      this.send({ id: message.id, result: message.method === 'workspace/configuration' ? message.params.items.map(() => null) : null });
    } else if (message.id !== undefined) {
      const { resolve, reject } = this.waiting.get(message.id);
      this.waiting.delete(message.id);
      message.error ? reject(new Error(`${message.error.code} ${message.error.message}`)) : resolve(message.result);
    } else {
      this.listeners = this.listeners.filter(listener => !listener(message));
    }
  }

  send(message) {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    this.process.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  }

  notify(method, params) { this.send({ method, params }); }

  request(method, params) {
    const id = this.next++;
    this.send({ id, method, params });
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }

  /** The first notification that fits. */
  wait(fits) {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error('no answer')), giveUpMs);
      this.listeners.push(message => {
        if (!fits(message)) return false;
        clearTimeout(timer);
        resolve(message);
        return true;
      });
    });
  }

  get peakMiB() {
    const line = /VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${this.process.pid}/status`, 'utf8'));
    return Number(line[1]) / 1024;
  }
}

const at = (sorted, part) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))];
const spread = values => {
  const sorted = [...values].sort((a, b) => a - b);
  return { median: at(sorted, 0.5), p95: at(sorted, 0.95) };
};

async function measure(server, lines) {
  const file = files[server.file](lines);
  const uri = `file:///measure/${file.name}`;
  const client = new Server(server);
  const result = { name: server.name, lines: file.text.split('\n').length };
  await client.request('initialize', {
    processId: process.pid,
    rootUri: null,
    capabilities: {
      textDocument: {
        synchronization: { dynamicRegistration: false },
        publishDiagnostics: { versionSupport: true },
        ...(server.pull ? { diagnostic: { dynamicRegistration: false } } : {}),
        completion: { completionItem: { snippetSupport: true } },
        hover: { contentFormat: ['markdown', 'plaintext'] },
      },
      workspace: { configuration: true },
    },
    initializationOptions: server.options ?? null,
  });
  result.initialize = performance.now() - client.started;
  client.notify('initialized', {});
  if (server.settings) client.notify('workspace/didChangeConfiguration', { settings: server.settings });

  let version = 1;
  const onLine = diagnostics => diagnostics.some(d => d.range.start.line === file.line);
  const shows = async wrong => {
    if (!server.pull) {
      await client.wait(m => m.method === 'textDocument/publishDiagnostics' && m.params.uri === uri && onLine(m.params.diagnostics) === wrong);
      return;
    }
    const until = performance.now() + giveUpMs;
    while (performance.now() < until) {
      const answer = await client.request('textDocument/diagnostic', { textDocument: { uri } });
      if (answer.kind === 'full' && onLine(answer.items) === wrong) return;
    }
    throw new Error('no answer');
  };
  const edit = wrong => client.notify('textDocument/didChange', {
    textDocument: { uri, version: ++version },
    contentChanges: [{ range: { start: { line: file.line, character: file.character }, end: { line: file.line, character: file.character + 1 } }, text: wrong ? file.wrong : file.right }],
  });

  // The text is opened wrong, so that the first findings tell that the line was read.
  const text = file.text.split('\n');
  text[file.line] = text[file.line].slice(0, file.character) + file.wrong + text[file.line].slice(file.character + 1);
  let start = performance.now();
  const opened = server.pull ? null : shows(true);
  client.notify('textDocument/didOpen', { textDocument: { uri, languageId: file.language, version, text: text.join('\n') } });
  await (opened ?? shows(true));
  result.open = performance.now() - start;

  const edits = [], completions = [], hovers = [];
  let wrong = true;
  for (let round = 0; round < rounds + 10; round++) {
    wrong = !wrong;
    start = performance.now();
    const shown = server.pull ? null : shows(wrong);
    edit(wrong);
    await (shown ?? shows(wrong));
    if (round >= 10) edits.push(performance.now() - start);
  }
  for (let round = 0; round < rounds; round++) {
    wrong = !wrong;
    start = performance.now();
    edit(wrong);
    await client.request('textDocument/completion', { textDocument: { uri }, position: { line: file.line, character: file.character } });
    completions.push(performance.now() - start);
    wrong = !wrong;
    start = performance.now();
    edit(wrong);
    if (process.env.NO_HOVER) { hovers.push(0); continue; }
    await client.request('textDocument/hover', { textDocument: { uri }, position: { line: file.line, character: file.hover } });
    hovers.push(performance.now() - start);
  }
  Object.assign(result, { edit: spread(edits), completion: spread(completions), hover: spread(hovers) });

  // Let what is still on its way arrive, then 200 edits at once; the last state differs from the one before.
  await new Promise(resolve => setTimeout(resolve, 700));
  if (wrong) { const shown = server.pull ? null : shows(false); edit(false); await (shown ?? shows(false)); }
  start = performance.now();
  const last = server.pull ? null : client.wait(m => m.method === 'textDocument/publishDiagnostics' && m.params.uri === uri && (m.params.version ?? version) === version && onLine(m.params.diagnostics));
  for (let index = 0; index < 201; index++) edit(index % 2 === 0);
  await (last ?? shows(true));
  result.burst = performance.now() - start;
  result.peak = client.peakMiB;
  client.process.kill('SIGKILL');
  return result;
}

const cell = (value, width) => String(value).padStart(width);
const ms = value => value.toFixed(value < 10 ? 1 : 0);
const pair = ({ median, p95 }) => `${ms(median)} / ${ms(p95)}`;
console.log('milliseconds (median / 95th percentile); peak memory in MiB');
console.log(['server'.padEnd(14), cell('lines', 8), cell('initialize', 11), cell('open', 8), cell('edit', 13), cell('completion', 13), cell('hover', 13), cell('burst', 8), cell('peak', 7)].join(' '));
for (const size of sizes) {
  for (const server of servers) {
    try {
      const r = await measure(server, size);
      console.log([r.name.padEnd(14), cell(r.lines, 8), cell(ms(r.initialize), 11), cell(ms(r.open), 8), cell(pair(r.edit), 13), cell(pair(r.completion), 13), cell(pair(r.hover), 13), cell(ms(r.burst), 8), cell(r.peak.toFixed(0), 7)].join(' '));
    } catch (fault) {
      console.log(`${server.name.padEnd(14)} ${cell(size, 8)}  gave up: ${fault.message}`);
    }
  }
}
process.exit(0);
