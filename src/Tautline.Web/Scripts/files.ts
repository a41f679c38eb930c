// Fetching and saving files: the two things a page can only ask its browser for.

export async function fetchBytes(address: string): Promise<Uint8Array> {
  let answer: Response;
  try {
    answer = await fetch(address);
  } catch {
    throw new Error("There is no connection to the server.");
  }
  if (!answer.ok) throw new Error(`The server answered ${answer.status}.`);
  return new Uint8Array(await answer.arrayBuffer());
}

export function saveFile(fileName: string, kind: string, bytes: Uint8Array<ArrayBuffer>): void {
  const address = URL.createObjectURL(new Blob([bytes], { type: kind }));
  const link = Object.assign(document.createElement("a"), { href: address, download: fileName });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
