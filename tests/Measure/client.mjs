// A language client of a hundred lines: frames over standard input and output, and waiting for messages.
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';

export class Client {
  #id = 0;
  #pending = new Map();
  #chunks = [];
  #have = 0;
  #need = -1;
  #listeners = new Set();

  constructor(command, args) {
    this.started = performance.now();
    this.process = spawn(command, args, { stdio: ['pipe', 'pipe', 'ignore'] });
    this.process.stdout.on('data', (chunk) => this.#take(chunk));
    this.process.on('error', (problem) => { throw problem; });
    this.process.on('exit', (code) => { if (!this.leaving) this.#fail(new Error(`${command} ended with ${code}`)); });
    this.process.stdin.on('error', () => {});
  }

  ask(method, params) {
    const id = ++this.#id;
    this.#send({ jsonrpc: '2.0', id, method, params });
    return new Promise((resolve, reject) => this.#pending.set(id, { resolve, reject }));
  }

  tell(method, params) {
    this.#send({ jsonrpc: '2.0', method, params });
  }

  // Waits for a notification that fits; gives up after a while.
  hear(method, fits, patience) {
    return new Promise((resolve, reject) => {
      const listener = (message) => {
        if (message.method === method && fits(message.params)) done(resolve, message.params);
      };
      const timer = setTimeout(() => done(reject, new Error(`no ${method} within ${patience} ms`)), patience);
      const done = (how, what) => { clearTimeout(timer); this.#listeners.delete(listener); how(what); };
      this.#listeners.add(listener);
    });
  }

  // The most memory the process ever held, in MiB (Linux).
  peakMemory() {
    try {
      return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${this.process.pid}/status`, 'utf8'))[1]) / 1024;
    } catch {
      return NaN;
    }
  }

  async leave() {
    this.leaving = true;
    const ended = new Promise((resolve) => this.process.once('exit', resolve));
    const kill = setTimeout(() => this.process.kill('SIGKILL'), 5000);
    this.ask('shutdown').then(() => this.tell('exit'), () => {});
    await ended;
    clearTimeout(kill);
  }

  #send(message) {
    const body = Buffer.from(JSON.stringify(message));
    this.process.stdin.write(Buffer.concat([Buffer.from(`Content-Length: ${body.length}\r\n\r\n`), body]));
  }

  #take(chunk) {
    this.#chunks.push(chunk);
    this.#have += chunk.length;
    while (true) {
      if (this.#need < 0) {
        const all = this.#join();
        const end = all.indexOf('\r\n\r\n');
        if (end < 0) return;
        this.#need = Number(/content-length: *(\d+)/i.exec(all.subarray(0, end).toString())[1]);
        this.#keep(all.subarray(end + 4));
      }
      if (this.#have < this.#need) return;
      const all = this.#join();
      const message = JSON.parse(all.subarray(0, this.#need).toString());
      this.#keep(all.subarray(this.#need));
      this.#need = -1;
      this.#handle(message);
    }
  }

  #join() {
    if (this.#chunks.length !== 1) this.#chunks = [Buffer.concat(this.#chunks)];
    return this.#chunks[0];
  }

  #keep(rest) {
    this.#chunks = [rest];
    this.#have = rest.length;
  }

  #handle(message) {
    if (message.method === undefined) {
      const waiter = this.#pending.get(message.id);
      this.#pending.delete(message.id);
      if (message.error) waiter?.reject(new Error(message.error.message));
      else waiter?.resolve(message.result);
      return;
    }
    if (message.id !== undefined) {
      const result = message.method === 'workspace/configuration' ? message.params.items.map(() => ({})) : null;
      this.#send({ jsonrpc: '2.0', id: message.id, result });
    }
    for (const listener of [...this.#listeners]) listener(message);
  }

  #fail(problem) {
    for (const waiter of this.#pending.values()) waiter.reject(problem);
    this.#pending.clear();
  }
}
