type Key = string | number;

/** Copy of `whole` with the value at `path` replaced; undefined takes the key away. */
export const withValue = <T>(whole: T, path: readonly Key[], value: unknown): T => {
  const [key, ...rest] = path;
  if (key === undefined) return value as T;
  if (Array.isArray(whole)) {
    const copy = [...whole];
    copy[key as number] = withValue(copy[key as number], rest, value);
    return copy as T;
  }
  const copy: Record<string, unknown> = { ...(whole as object) };
  if (rest.length === 0 && value === undefined) delete copy[key];
  else copy[key] = withValue(copy[key], rest, value);
  return copy as T;
};

export const valueAt = (whole: unknown, path: readonly Key[]): unknown =>
  path.reduce<unknown>((part, key) => (part as Record<Key, unknown> | undefined)?.[key], whole);
