import { parentPort } from "node:worker_threads";
import { expose } from "comlink";
import nodeEndpoint from "comlink/dist/esm/node-adapter.mjs";
import { ShareWorker } from "./share-worker.ts";

if (!parentPort) throw new Error("expected to run as a worker thread");
expose(new ShareWorker(), nodeEndpoint(parentPort));
