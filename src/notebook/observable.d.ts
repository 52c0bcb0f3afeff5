/** The public part of the reactive runtime that is used here; the package brings no types. */
declare module "@observablehq/runtime" {
  export interface Observer {
    pending?(): void;
    fulfilled?(value: unknown): void;
    rejected?(error: unknown): void;
  }
  export interface Variable {
    define(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): Variable;
    delete(): void;
  }
  export interface Module {
    variable(observer?: Observer): Variable;
    define(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): Variable;
    redefine(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): Variable;
  }
  export class Runtime {
    module(): Module;
    dispose(): void;
  }
}
