// The language server in a worker of its own. The page sends messages of the protocol as text, and files that lie beside notes.
interface Exports { HealthNotes: { Web: { Program: { Receive(json: string): void; Keep(path: string, bytes: Uint8Array): void } } } }
export type ToWorker = string | { path: string; bytes: Uint8Array };

const early: ToWorker[] = [];
let take = (message: ToWorker): void => { early.push(message); };
self.onmessage = (event: MessageEvent<ToWorker>) => take(event.data);

// Without this name the runtime takes a worker for one of its own threads, and waits for its main one.
(globalThis as { dotnetSidecar?: boolean }).dotnetSidecar = true;
// @ts-ignore: made by the publish of the worker project
const { dotnet } = await import('./_framework/dotnet.js');
const runtime = await dotnet.create();
runtime.setModuleImports('host', {
  post: (json: string) => self.postMessage(json),
  today: () => self.name,
});
const { Program } = (await runtime.getAssemblyExports('HealthNotes.Web.dll') as Exports).HealthNotes.Web;
void runtime.runMain('HealthNotes.Web.dll', []);
take = (message) => (typeof message === 'string' ? Program.Receive(message) : Program.Keep(message.path, message.bytes));
early.forEach((message) => take(message));
