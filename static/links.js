// What links carry, through the browser's own compression (deflate, RFC 1951): see web/src/link.rs.

const through = (bytes, stream) => new Blob([bytes]).stream().pipeThrough(stream);

export async function deflate(bytes) {
  const out = through(bytes, new CompressionStream('deflate-raw'));
  return new Uint8Array(await new Response(out).arrayBuffer());
}

// Rejects what is no compressed data, and what holds more than so many bytes as soon as it does.
export async function inflate(bytes, most) {
  const parts = [];
  let length = 0;
  for (
    let reader = through(bytes, new DecompressionStream('deflate-raw')).getReader(), part;
    !(part = await reader.read()).done;
  ) {
    parts.push(part.value);
    length += part.value.length;
    if (length > most) {
      await reader.cancel();
      throw new RangeError('too long');
    }
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}
