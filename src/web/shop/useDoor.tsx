import { useQueryClient } from "@tanstack/react-query";
import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from "react";
import { type Least, mayDo, type Role } from "#contract/records/account";
import { type WhoAmI, whoAmISchema } from "#contract/routes/access";
import { recall, remember } from "../client/memory.ts";
import { forgetRead } from "../offline/install.ts";
import { DOOR_MEMORY, hearDoor } from "./doorNews.ts";
import { actAs } from "./person.ts";
import { answered, shop } from "./shopClient.ts";
import { useRead } from "./useShop.ts";

const SESSION = "session";
const KEY = [SESSION];
const OPEN: WhoAmI = { state: "no passwords", personId: null, role: null, sessionId: null };
const LOWEST: Role = "reader";

const Here = createContext<WhoAmI>(OPEN);

/** Knows who is signed in, for everything inside. While the server is away it is whoever was last. */
export function DoorHere({ children }: { readonly children: ReactNode }) {
  const client = useQueryClient();
  const [last] = useState(lastKnown);
  const asked = useRead(KEY, () => answered(shop.session.$get()));
  const who = asked.data ?? last;
  useEffect(() => hearDoor(() => void client.invalidateQueries({ queryKey: KEY })), [client]);
  useForgetting(who);
  // Before anything is drawn that writes: what is sent names who is signed in.
  if (who.personId !== null) actAs(who.personId);
  return <Here.Provider value={who}>{children}</Here.Provider>;
}

/** Somebody else is here, or nobody: what was read for the one before is thrown away, in view, in memory and in this browser. */
function useForgetting(who: WhoAmI): void {
  const client = useQueryClient();
  const before = useRef(lastKnown().sessionId);
  useEffect(() => {
    const text = JSON.stringify(who);
    // A change of what is kept is news for the other tabs.
    if (recall(DOOR_MEMORY) !== text) remember(DOOR_MEMORY, text);
    if (before.current === who.sessionId) return;
    before.current = who.sessionId;
    const isRead = ({ queryKey }: { readonly queryKey: readonly unknown[] }) => queryKey[0] !== SESSION;
    void forgetRead();
    client.removeQueries({ predicate: isRead, type: "inactive" });
    void client.resetQueries({ predicate: isRead, type: "active" });
  }, [client, who]);
}

/** Who is signed in here; `no passwords` where nobody needs to be. */
export function useDoor(): WhoAmI {
  return useContext(Here);
}

/** Takes what a sign-in, a take-over or a sign-out answered. */
export function useEnter(): (who: WhoAmI) => void {
  const client = useQueryClient();
  return (who) => client.setQueryData(KEY, who);
}

export const SIGNED_OUT: WhoAmI = { ...OPEN, state: "signed out" };

/** What the person here may do; everything where the shop has no passwords. */
export function useMay(): (least: Least) => boolean {
  const { state, role } = useDoor();
  return (least) => mayDo(state === "no passwords" ? "owner" : (role ?? LOWEST), least);
}

/** What only some roles may use is not offered to the others. */
export function For({ least, children }: { readonly least: Least; readonly children: ReactNode }) {
  return useMay()(least) ? children : null;
}

function lastKnown(): WhoAmI {
  const text = recall(DOOR_MEMORY);
  if (text === null) return OPEN;
  try {
    return whoAmISchema.safeParse(JSON.parse(text)).data ?? OPEN;
  } catch {
    return OPEN;
  }
}
