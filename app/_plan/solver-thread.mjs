// What a thread of the constraint solver starts with. Under Node the package calls a program that nobody has; the WASM
// build that it brings along is made for browsers, so its worker is given what it would find in one.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';

const script = path.join(workerData.folder, 'minizinc-worker.js');
let hear = () => {};
globalThis.self = globalThis;
globalThis.require = createRequire(script);
globalThis.__dirname = workerData.folder;
globalThis.addEventListener = (kind, listener) => {
  if (kind === 'message') hear = listener;
};
globalThis.postMessage = (message) => parentPort.postMessage(message);
vm.runInThisContext(readFileSync(script, 'utf8'), { filename: script });
parentPort.on('message', (data) => hear({ data }));
hear({
  data: {
    wasmURL: path.join(workerData.folder, 'minizinc.wasm'),
    dataURL: path.join(workerData.folder, 'minizinc.data'),
  },
});
