// A QR code of an address, to be printed. Fetched only when a pack is laid out.
import { encode } from 'uqr';
import type { QrCut } from '../../../../shared/trip/papers/types.ts';

/** The code of an address as one path of squares. Four units stay white on each side, as the standard asks (ISO/IEC 18004). */
export function qrCut(address: string): QrCut {
  const { data, size } = encode(address, { ecc: 'M', border: 4 });
  const rows = data.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join(''));
  return { side: size, path: rows.join('') };
}
