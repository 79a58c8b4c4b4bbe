import { LINK_MARK } from "./address.ts";
import type { Paper } from "./book.ts";
import { type Brought, readParcel, writeStudy } from "./parcel.ts";

/** Beyond this a packed study is none of ours. */
const MOST = 5_000_000;
/** Longer links are cut by some programs that carry them. */
export const LONG_LINK = 8000;

class TooMuch extends Error {}

const through = async (bytes: Uint8Array<ArrayBuffer>, by: GenericTransformStream): Promise<Uint8Array> => {
  const reader = (new Blob([bytes]).stream().pipeThrough(by) as ReadableStream<Uint8Array>).getReader();
  const parts: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > MOST) {
      await reader.cancel();
      throw new TooMuch("it unpacks to more than 5 MB, which no study is");
    }
    parts.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
};

const toText = (bytes: Uint8Array): string => {
  let raw = "";
  for (const byte of bytes) raw += String.fromCharCode(byte);
  return btoa(raw).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
};
const toBytes = (text: string): Uint8Array<ArrayBuffer> => {
  if (!/^[\w-]+$/.test(text)) throw new Error("it holds characters that no link of ours has");
  const raw = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(raw, (one) => one.charCodeAt(0));
};

/** The study with what its catalog differs in, packed into a fragment. */
export const writeFragment = async (paper: Paper): Promise<string> => {
  const plain = new TextEncoder().encode(JSON.stringify(JSON.parse(writeStudy(paper))));
  return LINK_MARK + toText(await through(plain, new CompressionStream("deflate-raw")));
};

/** What a link brings; the reason in words where it brings nothing. */
export const readFragment = async (fragment: string): Promise<Brought> => {
  const packed = toBytes(fragment.slice(LINK_MARK.length));
  let plain: Uint8Array;
  try {
    plain = await through(packed, new DecompressionStream("deflate-raw"));
  } catch (error) {
    throw error instanceof TooMuch ? error : new Error("it was cut short or changed on its way");
  }
  return readParcel(new TextDecoder().decode(plain));
};
