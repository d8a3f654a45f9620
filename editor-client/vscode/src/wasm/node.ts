// The server as WebAssembly in a process of its own, for a computer without a program for its system. Bundled to dist/wasm.
import { serve, type DotNet } from '../../../web/src/serve.js';

// @ts-ignore: lies beside the bundle
const load = (): Promise<DotNet> => import('./_framework/dotnet.js');
const server = serve(load, { post: (json) => { process.send?.(JSON.parse(json)); }, today: () => process.env['HNOTE_TODAY'] ?? '' });
process.on('message', (message: object) => server.take('path' in message ? message as { path: string; bytes: Uint8Array } : JSON.stringify(message)));
process.on('disconnect', () => process.exit(1));
await server.started;
process.exit(await server.ended);
