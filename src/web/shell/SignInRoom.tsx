import { type FormEvent, useEffect, useState } from "react";
import { ACCESS } from "#words/en/rooms/access";
import { SHOP_FRAME } from "#words/en/rooms/frame";
import { LineField } from "../pieces/PlainFields.tsx";
import { faultWords } from "../shop/faultWords.ts";
import { answered, type ShopFault, shop } from "../shop/shopClient.ts";
import { useOutbox } from "../shop/useOutbox.tsx";
import { useEnter } from "../shop/useSession.tsx";
import { useWrite } from "../shop/useShop.ts";

/** In the place of every room while nobody is signed in; the address stays, and the room comes back. */
export function SignInRoom() {
  const [signInName, setName] = useState("");
  const [password, setPassword] = useState("");
  const enter = useEnter();
  const { waiting } = useOutbox();
  const signIn = useWrite(() => answered(shop.session.$post({ json: { signInName, password } })), []);
  useEffect(() => {
    document.title = ACCESS.title;
  }, []);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    signIn.mutate(undefined, { onSuccess: enter, onError: () => setPassword("") });
  };
  return (
    <main id="sign-in" className="room sign-in" tabIndex={-1}>
      <section className="plate">
        <h1>{ACCESS.title}</h1>
        <form className="edit-form" onSubmit={submit}>
          <LineField label={ACCESS.name} value={signInName} autoComplete="username" onChange={setName} />
          <LineField label={ACCESS.password} value={password} type="password" autoComplete="current-password" onChange={setPassword} />
          {signIn.error !== null && (
            <p role="alert" className="failed">
              {wordsOf(signIn.error)}
            </p>
          )}
          <button type="submit" className="button primary" disabled={signIn.isPending || signInName === "" || password === ""}>
            {signIn.isPending ? ACCESS.signingIn : ACCESS.signIn}
          </button>
        </form>
        {waiting.length > 0 && <p role="status">{ACCESS.waitsHere(waiting.length)}</p>}
        <p className="note">{ACCESS.forgotten}</p>
      </section>
    </main>
  );
}

function wordsOf(fault: ShopFault): string {
  if (fault.problem === null) return SHOP_FRAME.away;
  return fault.isKind("wrongSecret") ? ACCESS.wrongSignIn : faultWords(fault);
}
