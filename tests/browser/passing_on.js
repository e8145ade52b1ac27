// What the specs of links share: a link sealed by hand, and a QR code read off the screen.

import jsQR from 'jsqr';
import { deflateRawSync } from 'node:zlib';

// A link with this compact form, sealed as a right one is: crates/lessons/src/link.
export function sealed({ version = 1, kind = 2, body }) {
  const deflated = deflateRawSync(body);
  let crc = -1;
  for (const byte of [version, kind, ...deflated]) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = (crc >>> 1) ^ (0xedb88320 & -(crc & 1));
  }
  const sum = Buffer.alloc(4);
  sum.writeUInt32LE(~crc >>> 0);
  return Buffer.concat([Buffer.from([version, kind]), sum, deflated]).toString('base64url');
}

// What a phone reads off the screen there.
export async function readCode(page) {
  const png = (await page.locator('#qr-code').screenshot()).toString('base64');
  const { white, width, height } = await page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (it) => it.charCodeAt(0));
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const pen = canvas.getContext('2d');
    pen.drawImage(picture, 0, 0);
    const { data, width, height } = pen.getImageData(0, 0, picture.width, picture.height);
    let white = '';
    for (let at = 0; at < data.length; at += 4) white += data[at] > 127 ? 'f' : '0';
    return { white, width, height };
  }, png);
  // Four bytes to a dot, the last opaque.
  const dots = Uint8ClampedArray.from({ length: 4 * white.length }, (_, at) =>
    at % 4 === 3 || white[at >> 2] === 'f' ? 255 : 0);
  return jsQR(dots, width, height)?.data;
}
