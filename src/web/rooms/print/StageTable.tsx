import type { Ticket } from "#contract/records/ticket";
import type { SignedEntry } from "#contract/records/ticketWork";
import type { Work } from "#engine/signed/work";
import { TICKET } from "#words/en/rooms/ticket";
import { abrasiveName, stageName, usedInstead, wayText } from "../../benchWork/plannedStages.ts";

/** The stages planned, each with who has done it, and room to sign by hand. */
export function StageTable({ ticket, work }: { readonly ticket: Ticket; readonly work: Work<SignedEntry> }) {
  if (ticket.stages.length === 0) return <p className="nothing">{TICKET.noWork}</p>;
  return (
    <table className="stages">
      <thead>
        <tr>
          <th scope="col">{TICKET.stage}</th>
          <th scope="col" className="figure">
            {TICKET.sides}
          </th>
          <th scope="col">{TICKET.initials}</th>
        </tr>
      </thead>
      <tbody>
        {ticket.stages.map((planned, i) => {
          const { id, abrasive, way, sides, secondsPerSide } = planned;
          const standing = work.stages[i];
          const tool = [abrasiveName(abrasive), way === null ? null : wayText(way)].filter((part) => part !== null);
          return (
            <tr key={id}>
              <td>
                {i + 1}. {stageName(planned)}
                {tool.length > 0 && <small>{tool.join(", ")}</small>}
              </td>
              <td className="figure">{sides === null || !secondsPerSide ? "" : TICKET.sidesBy(sides, secondsPerSide)}</td>
              <td className="initials">
                {standing.state === "begun" && TICKET.sidesOf((sides ?? 0) - standing.sidesLeft.length, sides ?? 0)}
                {standing.state === "served" && TICKET.served(standing.by?.initials ?? "")}
                {standing.state === "signed" && `${standing.by?.initials ?? ""} ${usedInstead(standing)}`}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
