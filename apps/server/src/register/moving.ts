import { type DocumentOwner, type Holder, type Moved, moveThings, type Signature } from '#deferrals';
import { newId } from '#store';
import { Problem } from '../http/problem.js';
import type { MoveBody } from './bodies.js';
import type { RegisterScene } from './register-scene.js';

/** The acts that move things from who has them to who gets them, with the defects they are written on. */
export function movedOf(
  scene: RegisterScene,
  { items, defect, together, reason }: MoveBody,
  by: Signature,
  document: DocumentOwner | null,
): { moved: Moved; from: string; to: string } {
  if ((defect === undefined) === (document === null)) {
    const words = 'name one owner: an open item or a document';
    throw new Problem('invalid-input', words, { errors: [{ pointer: '/defect', reason: words }] });
  }
  const from = holderOf(scene, items);
  const to = defect === undefined ? register(scene, document) : holderNamed(scene, defect);
  const ids = { gives: newId(), takes: newId() };
  const moved = moveThings({ ids, by, items, from, to, together, reason }, scene.context);
  return { moved, from: idOf(from), to: idOf(to) };
}

/** Who has these things now. Where two open items have them, the first one gives. */
function holderOf(scene: RegisterScene, items: readonly string[]): Holder {
  const { life, opened } = scene;
  const [first] = items;
  const thing = life.things.find(({ item }) => item.id === first);
  if (thing !== undefined) return register(scene, thing.owner);
  const found = opened.find((one) => one.life.left.some(({ id }) => id === first));
  if (!found) throw new Problem('not-found', `Nothing by the number ${first} is left on ${scene.row.registration}.`);
  return { kind: 'defect', life: found.life };
}

function holderNamed({ opened, row }: RegisterScene, defect: string): Holder {
  const found = opened.find((one) => one.row.id === defect);
  if (!found) throw new Problem('not-found', `There is no open item ${defect} on ${row.registration}.`);
  return { kind: 'defect', life: found.life };
}

function register({ life }: RegisterScene, owner: DocumentOwner | null): Holder {
  return { kind: 'register', life, owner };
}

function idOf(holder: Holder): string {
  return holder.kind === 'defect' ? holder.life.defect : '';
}
