/** Proxy objects as the API hands them out: load before read, nothing that does not exist, nothing newer than the version. */
import type { FakeContext } from "./excel.ts";
import { KINDS } from "./kinds.ts";
import { AREA, bad, FakeError, type Kind, type Listener } from "./types.ts";

export function object(context: FakeContext, kind: Kind, find: () => unknown, nullable = false): any {
  const loaded = new Map<string, unknown>();
  const children = new Map<string, any>();
  let target: any;
  let isNull: boolean | undefined;
  const resolve = (): any => {
    if (target !== undefined) return target;
    const found = find();
    if (found === null || found === undefined) {
      if (nullable) {
        isNull = true;
        return null;
      }
      throw new FakeError("ItemNotFound", `this ${kind.name} does not exist`);
    }
    isNull = false;
    target = found;
    context.fake.track(found);
    return found;
  };
  const present = (what: string): any => {
    const t = resolve();
    if (t === null) throw new FakeError("InvalidOperation", `${what} of a ${kind.name} that does not exist`);
    return t;
  };
  const need = (since?: string) => since !== undefined && context.fake.since(since);
  const child = (name: string): any => {
    const nav = kind.navs![name]!;
    need(nav.since);
    if (!children.has(name))
      children.set(
        name,
        object(context, KINDS[nav.kind]!, () => nav.find(present(name), context.fake)),
      );
    return children.get(name);
  };
  const load = (path: string): void => {
    const [head = "", ...rest] = path.trim().split("/");
    if (head === "items" && kind.items) {
      const { items } = kind;
      context.look(() => {
        const t = present("items");
        const had = loaded.get("items") as any[] | undefined;
        const list = had ?? items.list(t, context.fake).map((item) => object(context, KINDS[items.kind]!, () => item));
        loaded.set("items", list);
        if (rest.length > 0) {
          const before = context.ops.length;
          for (const item of list) item.load(rest.join("/"));
          for (const op of context.ops.splice(before)) op.run();
        }
      });
      return;
    }
    if (kind.navs?.[head] && rest.length > 0) {
      child(head).load(rest.join("/"));
      return;
    }
    const prop = kind.props?.[head];
    if (prop?.get === undefined)
      throw new FakeError("InvalidArgument", `${kind.name} has no property "${head}" to load`);
    need(prop.since);
    context.look(() => {
      const t = resolve();
      if (t === null) return;
      const value = prop.get!(t, context.fake);
      context.answered(value);
      loaded.set(head, value);
    });
  };
  return new Proxy(
    {},
    {
      get(_, key) {
        if (key === AREA) return () => present("area");
        if (typeof key !== "string" || key === "then" || key === "toJSON") return undefined;
        if (key === "context") return context.face;
        if (key === "isNullObject") {
          if (isNull === undefined) throw new FakeError("PropertyNotLoaded", "isNullObject was read before a sync");
          return isNull;
        }
        if (key === "load")
          return (names: string) => {
            if (typeof names !== "string" || names === "") throw bad("load without names");
            names.split(",").forEach(load);
          };
        if (key === "items" && kind.items) {
          if (!loaded.has("items")) throw new FakeError("PropertyNotLoaded", `items of ${kind.name} were not loaded`);
          return loaded.get("items");
        }
        const prop = kind.props?.[key];
        if (prop) {
          if (!loaded.has(key)) throw new FakeError("PropertyNotLoaded", `${key} of ${kind.name} was not loaded`);
          return loaded.get(key);
        }
        if (kind.navs?.[key]) return child(key);
        const event = kind.events?.[key];
        if (event) {
          need(event.since);
          return {
            add(listener: Listener) {
              context.look(() => context.fake.listeners[event.name].add(listener));
              return {
                context: context.face,
                remove: () => context.look(() => context.fake.listeners[event.name].delete(listener)),
              };
            },
          };
        }
        const method = kind.methods?.[key];
        if (method === undefined) throw new TypeError(`${kind.name} has no member "${key}"`);
        return (...args: any[]) => {
          need(method.since);
          if (method.check && !method.check(args)) throw bad(`${kind.name}.${key}(${JSON.stringify(args)})`);
          if (method.gives === undefined) {
            context.change(() => void method.do(present(key), context.fake, args), args);
            return undefined;
          }
          let made: unknown;
          let done = false;
          const run = () => {
            if (!done) made = method.do(present(key), context.fake, args);
            done = true;
            return made;
          };
          if (method.writes) context.change(() => void run(), args);
          else context.look(() => void run());
          return object(context, KINDS[method.gives]!, run, method.nullable);
        };
      },
      set(_, key, value) {
        const prop = typeof key === "string" ? kind.props?.[key] : undefined;
        if (prop?.set === undefined) throw new TypeError(`${kind.name}.${String(key)} cannot be set`);
        need(prop.since);
        loaded.delete(String(key));
        context.change(() => prop.set!(present(String(key)), value, context.fake), value);
        return true;
      },
    },
  );
}
