import {html} from "htl";
import {packetAddress} from "./address.ts";

/** The way to add what nobody knows from its packet; from there the way leads back. */
export function packetLink(name: string): HTMLElement {
  const link = html`<a href="./add-from-its-packet.html"
    >Add “${name}” from its packet</a
  >` as HTMLAnchorElement;
  // The address of this page is only known when it is left.
  link.addEventListener("click", () => {
    link.href = packetAddress(name);
  });
  return link;
}
