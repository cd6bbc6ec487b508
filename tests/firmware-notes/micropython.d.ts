// Types for the little that the tests use of MicroPython's WebAssembly build, which brings none.
declare module '@micropython/micropython-webassembly-pyscript' {
  export function loadMicroPython(options: { stdout: (line: string) => void }): Promise<{
    FS: { writeFile(path: string, text: string): void };
    runPython(code: string): void;
  }>;
}
