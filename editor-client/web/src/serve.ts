// Starts the language server's program, in a browser's worker or in Node. It takes messages of the protocol as text, and files that lie
// beside notes.
interface Exports { HealthNotes: { Web: { Program: { Receive(json: string): void; Keep(path: string, bytes: Uint8Array): void } } } }
interface Runtime {
  setModuleImports(name: string, functions: object): void;
  getAssemblyExports(name: string): Promise<unknown>;
  runMain(name: string, args: string[]): Promise<number>;
}
/** What `dotnet.js` exports. */
export interface DotNet { dotnet: { create(): Promise<Runtime> } }
/** What the program asks of its surroundings: to send a message, and the day, which is empty but for tests. */
export interface Host { post(json: string): void; today(): string }
export type ToServer = string | { path: string; bytes: Uint8Array };

const program = 'HealthNotes.Web.dll';

/** What comes in before the program runs waits for it. */
export function serve(load: () => Promise<DotNet>, host: Host): { take(message: ToServer): void; started: Promise<void>; ended: Promise<number> } {
  const early: ToServer[] = [];
  let pass = (message: ToServer): void => { early.push(message); };
  let end = (_: number): void => { /* nobody waits yet */ };
  const ended = new Promise<number>((resolve) => { end = resolve; });
  const start = async (): Promise<void> => {
    const runtime = await (await load()).dotnet.create();
    runtime.setModuleImports('host', host);
    const { Program } = (await runtime.getAssemblyExports(program) as Exports).HealthNotes.Web;
    void runtime.runMain(program, []).then(end);
    pass = (message) => (typeof message === 'string' ? Program.Receive(message) : Program.Keep(message.path, message.bytes));
    early.forEach((message) => pass(message));
  };
  return { take: (message) => pass(message), started: start(), ended };
}
