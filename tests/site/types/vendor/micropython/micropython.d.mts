export function loadMicroPython(options: { url: string }): Promise<any>;
