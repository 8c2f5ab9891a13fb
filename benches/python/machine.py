"""What the numbers were taken on."""

from __future__ import annotations

import os
import platform
import subprocess


def flags() -> set[str]:
    """What the processor says that it has; empty where nobody can be asked."""
    try:
        with open("/proc/cpuinfo", encoding="ascii", errors="replace") as lines:
            return next((set(line.split(":")[1].split()) for line in lines if line.startswith("flags")), set())
    except OSError:
        return set()


def vector_bits() -> int:
    """The widest vectors that the core's loops can use here."""
    have = flags()
    if {"avx512f", "avx512dq", "avx512vl"} <= have:
        return 512
    return 256 if "avx2" in have else 128


def processor() -> str:
    """The processor's name."""
    try:
        with open("/proc/cpuinfo", encoding="ascii", errors="replace") as lines:
            for line in lines:
                if line.startswith("model name"):
                    return line.split(":")[1].strip()
    except OSError:
        pass
    return platform.machine()


def version_of(*command: str) -> str:
    """The first line that a program prints about itself."""
    try:
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()[0]
    except (OSError, subprocess.CalledProcessError):
        return f"no {command[0]}"


def line() -> str:
    """The line above the tables."""
    import numpy
    import scipy

    return (
        f"{processor()}, {os.cpu_count()} cores, {vector_bits()}-bit vectors, load {os.getloadavg()[0]:.1f} at the start; "
        f"Python {platform.python_version()}, NumPy {numpy.__version__}, SciPy {scipy.__version__}, "
        f"{version_of('rustc', '--version')}, {version_of('gcc', '--version')}, {'-'.join(platform.libc_ver())}."
    )
