import QRCode from "qrcode";
import { useEffect, useState } from "react";
import { TICKET } from "#words/en/rooms/ticket";

/** A QR code (ISO/IEC 18004) that opens a ticket when it is scanned. */
export function ScanCode({ ticketId }: { readonly ticketId: string }) {
  const [svg, setSvg] = useState("");
  useEffect(() => {
    let isWanted = true;
    QRCode.toString(`${location.origin}/tickets/${ticketId}`, { type: "svg", margin: 2, errorCorrectionLevel: "M" })
      .then((drawn) => isWanted && setSvg(drawn))
      .catch(() => isWanted && setSvg(""));
    return () => {
      isWanted = false;
    };
  }, [ticketId]);
  // The picture is made by the library from an address of our own.
  // biome-ignore lint/security/noDangerouslySetInnerHtml: see above
  return <div className="scan-code" role="img" aria-label={TICKET.scan} dangerouslySetInnerHTML={{ __html: svg }} />;
}
