/** A field whose value is made from a text when it is first asked for. */
class Waiting {
  readonly text: string;
  readonly read: (text: string) => object;

  constructor(text: string, read: (text: string) => object) {
    this.text = text;
    this.read = read;
  }
}

type Held = Record<string, Waiting | object>;

/** Beside the objects and not in them, so that one that is frozen can be read on. */
const heldBy = new WeakMap<object, Held>();

/** One for each field: objects that share it stay alike to the machine. */
const descriptors = new Map<string, PropertyDescriptor>();

/**
 * Gives an object a field whose value is read when it is first asked for, and is the same object from then on. To whoever
 * reads, copies, lists or freezes the object it is a field like any other.
 */
export function deferField(owner: object, field: string, text: string, read: (text: string) => object): void {
  const held = heldBy.get(owner);
  const waiting = new Waiting(text, read);
  if (held === undefined) heldBy.set(owner, { [field]: waiting });
  else held[field] = waiting;
  Object.defineProperty(owner, field, descriptorOf(field));
}

function descriptorOf(field: string): PropertyDescriptor {
  const known = descriptors.get(field);
  if (known !== undefined) return known;
  const descriptor: PropertyDescriptor = {
    enumerable: true,
    configurable: true,
    get(this: object): object {
      const held = heldBy.get(this) as Held;
      const now = held[field] as Waiting | object;
      if (!(now instanceof Waiting)) return now;
      const value = now.read(now.text);
      held[field] = value;
      return value;
    },
  };
  descriptors.set(field, descriptor);
  return descriptor;
}

/** What the fields of an object hold, without those that nobody has asked for yet. */
export function valuesAtHand(owner: object): readonly unknown[] {
  const held = heldBy.get(owner);
  if (held === undefined) return Object.values(owner);
  const fields = Object.keys(owner).filter((field) => !(held[field] instanceof Waiting));
  return fields.map((field) => (owner as Readonly<Record<string, unknown>>)[field]);
}
