"""On what kind of drive a file lies. SQLite's locks and its log do not work between several computers."""

from functools import cache
from pathlib import Path

NETWORK = set("nfs nfs4 cifs smb2 smb3 smbfs ncpfs afpfs afs webdav davfs 9p ceph lustre gpfs glusterfs".split())  # noqa: SIM905
"""Names of file systems that another computer serves, as Linux and macOS list them; likewise behind `fuse.`."""
FUSE = {f"fuse.{name}" for name in (*NETWORK, "sshfs", "rclone", "davfs2", "gvfsd-fuse")}


@cache
def network_drive(folder: Path) -> str | None:
    """The kind of network drive that a folder lies on, such as `nfs4`; None on a drive of this computer."""
    import psutil  # takes its time: only where a file is opened

    where = folder.resolve()
    if str(where).startswith("\\\\"):
        return "a shared folder"
    holding = [drive for drive in psutil.disk_partitions(all=True) if where.is_relative_to(drive.mountpoint)]
    if not holding:
        return None
    drive = max(holding, key=lambda drive: len(Path(drive.mountpoint).parts))
    remote = drive.fstype in NETWORK | FUSE or "remote" in drive.opts.split(",")
    return drive.fstype or "a network drive" if remote else None
