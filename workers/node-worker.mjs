// Node's threads read no TypeScript by themselves: tsx is registered first, then the worker proper is loaded
import { register } from "tsx/esm/api";

register();
await import("./node-worker.ts");
