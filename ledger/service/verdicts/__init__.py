"""May it leave? Checks, holds, releases, rejections."""
