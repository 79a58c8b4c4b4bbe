import { expose } from "comlink";
import { ShareWorker } from "./share-worker.ts";

expose(new ShareWorker());
