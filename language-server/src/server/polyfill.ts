/**
 * `Object.groupBy` for Node 20, which the parser library calls and editors of that age run on. Injected into the bundle
 * before everything else.
 */
Object.groupBy ??= <Key extends PropertyKey, Value>(
  values: Iterable<Value>,
  keyOf: (value: Value, index: number) => Key,
): Partial<Record<Key, Value[]>> => {
  const groups = Object.create(null) as Record<Key, Value[]>;
  let index = 0;
  for (const value of values) {
    const key = keyOf(value, index++);
    groups[key] ??= [];
    groups[key].push(value);
  }
  return groups;
};
