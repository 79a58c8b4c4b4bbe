declare module "comlink/dist/esm/node-adapter.mjs" {
  import type { Endpoint } from "comlink";

  /** A Node MessagePort or Worker as comlink's endpoint. */
  export default function nodeEndpoint(port: unknown): Endpoint;
}
