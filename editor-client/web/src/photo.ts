// A photo is drawn anew on a canvas, small and upright: where and with what it was taken stays behind.
const longestSide = 1000;
const quality = 0.78;

/** The picture as a JPEG file that holds nothing beside its pixels. */
export async function drawnAnew(file: Blob): Promise<Uint8Array> {
  const image = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const scale = Math.min(1, longestSide / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const context = canvas.getContext('2d');
  if (context === null) {
    throw new Error('this browser can\'t draw pictures');
  }
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  const blob = await new Promise<Blob | null>((resolve) => { canvas.toBlob(resolve, 'image/jpeg', quality); });
  if (blob === null) {
    throw new Error('the picture can\'t be written');
  }
  return bare(new Uint8Array(await blob.arrayBuffer()));
}

/** A JPEG without the blocks that are a program's own (APP1 to APP15) and without comments. */
export function bare(jpeg: Uint8Array): Uint8Array {
  const parts: Uint8Array[] = [jpeg.subarray(0, 2)];
  let at = 2;
  while (at + 4 <= jpeg.length && jpeg[at] === 0xff && jpeg[at + 1] !== 0xda) {
    const marker = jpeg[at + 1]!;
    const end = at + 2 + (jpeg[at + 2]! << 8 | jpeg[at + 3]!);
    if (!(marker >= 0xe1 && marker <= 0xef) && marker !== 0xfe) {
      parts.push(jpeg.subarray(at, end));
    }
    at = end;
  }
  parts.push(jpeg.subarray(at));
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  parts.reduce((offset, part) => { whole.set(part, offset); return offset + part.length; }, 0);
  return whole;
}
