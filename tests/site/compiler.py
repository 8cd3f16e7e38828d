"""TypeScript's compiler, which only reads the phone's scripts: fetched once from npm's registry, a digest for each machine.

It is one program with its libraries, 10 MB packed, kept for good in the user's cache; neither npm nor Node is needed.
"""
import base64
import hashlib
import http.client
import os
import pathlib
import platform
import tarfile
import tempfile
import urllib.request

VERSION = "7.0.2"
SHA512 = {  # as the registry has it at dist.integrity, by system and machine
    "linux-x64": "EYdf2cNg7rgCWJnxCdJ+F3V39O8ihb37eHAu1LK8oAFizgTQbPOK7zHHXbPt8rX24COqODXeI3sIf0fCXG7H/A==",
    "linux-arm64": "Qh4eU4/y3yDjnfjjyPYihMj5/ODIlmt+Bzu17OI+fiSRDW57QmU5SiN63exPRNJPKUzcc1INa1NXdrJ+MqHjUQ==",
    "darwin-x64": "SZ9xZInqApNlNGc9s0W1VSsktYSOe9cFqNOIqmN1Gs8SmkjKZYFt017G4VwPxASInODuAdbTW7sXiFUf893RgA==",
    "darwin-arm64": "gowzar9MwS/aRWp6f3a4KUqzRjAZjOsmGNCM6LcTgXum+dBfgsBVMN+AgvOCCbguXyick6LJhpBszxMebJ8syA==",
}
MACHINE = {"x86_64": "x64", "amd64": "x64", "aarch64": "arm64", "arm64": "arm64"}
PATIENCE_S = 60


class Missing(Exception):
    """The compiler is not here and cannot be had; says why."""


def compiler():
    """Path of the compiler, fetched where it is not here yet. Raises Missing; another content than the digest's is a failure."""
    machine = f"{platform.system().lower()}-{MACHINE.get(platform.machine().lower(), platform.machine())}"
    if machine not in SHA512:
        raise Missing(f"no digest of it for {machine}")
    caches = pathlib.Path(os.environ.get("XDG_CACHE_HOME") or pathlib.Path.home() / ".cache") / "panelhand"
    folder = caches / f"typescript-{VERSION}-{machine}"
    if not folder.exists():
        caches.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=caches) as fresh:
            packed = pathlib.Path(fresh) / "packed.tgz"
            packed.write_bytes(fetched(machine))
            with tarfile.open(packed) as archive:
                archive.extraction_filter = getattr(tarfile, "data_filter", None)  # before Python 3.11.4 there is none
                archive.extractall(fresh)
            try:
                (pathlib.Path(fresh) / "package").rename(folder)
            except OSError:  # another run was first
                assert folder.exists()
    return folder / "lib/tsc"


def fetched(machine):
    """The packed compiler, held to its digest. npm's own variable names another registry, such as a mirror."""
    registry = os.environ.get("npm_config_registry", "https://registry.npmjs.org").rstrip("/")
    url = f"{registry}/@typescript/typescript-{machine}/-/typescript-{machine}-{VERSION}.tgz"
    try:
        with urllib.request.urlopen(url, timeout=PATIENCE_S) as response:
            content = response.read()
    except (OSError, http.client.HTTPException) as error:
        raise Missing(f"{url}, which cannot be reached ({error})") from error
    assert base64.b64encode(hashlib.sha512(content).digest()).decode() == SHA512[machine], f"{url} is not what it was"
    return content
