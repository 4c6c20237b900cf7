/** Offers a file to be saved. */
export function saveBlob(blob: Blob, name: string): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken the file by then; without this it would keep it in memory as long as the page lives.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export function saveText(text: string, name: string, type: string): void {
  saveBlob(new Blob([text], { type: `${type};charset=utf-8` }), name);
}

/**
 * A picture as PNG.
 * @param scale points of the PNG to a unit of the picture, > 0
 * @throws when the browser cannot draw it
 */
export async function svgToPng(svg: string, scale: number): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(image.naturalWidth * scale);
  canvas.height = Math.round(image.naturalHeight * scale);
  const context = canvas.getContext("2d");
  if (context === null) throw new Error("This browser has no canvas to draw on.");
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob === null ? reject(new Error("This browser makes no PNG.")) : resolve(blob)), "image/png");
  });
}
