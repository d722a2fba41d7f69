// Reads the files of a zip archive, by its central directory.
import { inflateRawSync } from 'node:zlib';

/** Name and bytes of each file in an archive. Throws where it is none. */
export function unzip(archive: Buffer): Map<string, Buffer> {
  const end = archive.lastIndexOf(Buffer.from('PK\x05\x06', 'latin1'));
  if (end < 0) throw new Error('This is no zip archive.');
  const files = new Map<string, Buffer>();
  let at = archive.readUInt32LE(end + 16);
  for (let left = archive.readUInt16LE(end + 10); left > 0; left -= 1) {
    const packed_bytes = archive.readUInt32LE(at + 20);
    const name_bytes = archive.readUInt16LE(at + 28);
    const more_bytes = archive.readUInt16LE(at + 30) + archive.readUInt16LE(at + 32);
    const local = archive.readUInt32LE(at + 42);
    const name = archive.toString('utf8', at + 46, at + 46 + name_bytes);
    const start = local + 30 + archive.readUInt16LE(local + 26) + archive.readUInt16LE(local + 28);
    const packed = archive.subarray(start, start + packed_bytes);
    files.set(name, archive.readUInt16LE(at + 10) === 0 ? packed : inflateRawSync(packed));
    at += 46 + name_bytes + more_bytes;
  }
  return files;
}
