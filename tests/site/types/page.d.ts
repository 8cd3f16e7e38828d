// What the page's scripts may rely on and the compiler's own library does not say: the tag that a selector ends in is the
// element's type, and an element without one is an HTMLElement.
type Last<S extends string> = S extends `${string}, ${infer Rest}` ? Last<Rest> : S extends `${string} ${infer Rest}` ? Last<Rest> : S;
type Tag<S extends string> = S extends `${infer T}[${string}` ? Tag<T> : S extends `${infer T}:${string}` ? Tag<T> : S extends `${infer T}.${string}` ? T : S;
type Chosen<S extends string> = Tag<Last<S>> extends keyof HTMLElementTagNameMap ? HTMLElementTagNameMap[Tag<Last<S>>] : HTMLElement;

interface ParentNode {
  querySelector<S extends string>(selectors: S): Chosen<S> | null;
  querySelectorAll<S extends string>(selectors: S): NodeListOf<Chosen<S>>;
}

interface Document {
  // links to the styles of papers
  getElementById<Id extends string>(id: Id): (Id extends `paper-${string}` | `upright-${string}` ? HTMLLinkElement : HTMLElement) | null;
}

// `engine` is the interpreter's thread as engine_start.js begins it, before any module runs.
interface Begun { worker: Worker; hasFailed: boolean }
// `painted`: the rows that first_answer.js has put on the start page; the pressure that first_pressure.js has put on Pressure.
interface Window {
  painted?: any;
  engine?: { address: string; begin: (() => Begun) | null; first: Begun | null };
  trustedTypes?: { createPolicy(name: string, rules: Record<string, (text: string) => string>): any };
}

// A question to calc. `Doors` has every door's arguments and answer, as tests/contracts has them (doors.py writes it); what is held
// is an argument too, and each is handed over in one of the two places.
type Asked<Door extends keyof Doors> = Doors[Door]["arguments"];
type Ask = <Door extends keyof Doors, Held extends Partial<Asked<Door>> = {}>(
  door: Door,
  given: Omit<Asked<Door>, keyof Held>,
  held?: Held & Record<Exclude<keyof Held, keyof Asked<Door>>, never>,
) => Promise<Doors[Door]["answer"]>;
