"""Selenium's commands carried to Firefox over its own socket, so that no other driver need be installed.

Firefox answers the commands of the WebDriver standard itself, as JSON on a socket (Marionette) in place of HTTP.
"""
import itertools
import json
import socket

COMMANDS = {
    "clickElement": "ElementClick",
    "close": "CloseWindow",
    "findElement": "FindElement",
    "findElements": "FindElements",
    "get": "Navigate",
    "getCurrentUrl": "GetCurrentURL",
    "getElementProperty": "GetElementProperty",
    "getElementText": "GetElementText",
    "newSession": "NewSession",
    "newWindow": "NewWindow",
    "quit": "DeleteSession",
    "setWindowRect": "SetWindowRect",
    "switchToWindow": "SwitchToWindow",
    "w3cExecuteScript": "ExecuteScript",
    "w3cGetCurrentWindowHandle": "GetWindowHandle",
}


class Connection:
    """What selenium takes for its way to a browser: execute(command, parameters) and close()."""

    def __init__(self, port, patience_s):
        self._socket = socket.create_connection(("127.0.0.1", port), timeout=patience_s)
        self._stream = self._socket.makefile("rb")
        self._numbers = itertools.count()
        self._receive()  # the greeting

    def execute(self, command, parameters):
        given = {name: value for name, value in parameters.items() if name not in ("sessionId", "capabilities")}
        self._send([0, next(self._numbers), f"WebDriver:{COMMANDS[command]}", given])
        _, _, error, result = self._receive()
        if error:
            return {"status": 500, "value": json.dumps({"value": error})}
        return {"value": result["value"] if isinstance(result, dict) and set(result) == {"value"} else result}

    def close(self):
        self._stream.close()
        self._socket.close()

    def _send(self, message):
        content = json.dumps(message).encode()
        self._socket.sendall(b"%d:%b" % (len(content), content))

    def _receive(self):
        length = b""
        while not length.endswith(b":"):
            byte = self._stream.read(1)
            if not byte:
                raise ConnectionError("Firefox closed its socket")
            length += byte
        return json.loads(self._stream.read(int(length[:-1])))
