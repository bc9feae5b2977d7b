"""Other libraries: which may be asked, how they are reached, and how what they send is read.

Nothing is asked but what the operator allows (the setting `peers`), over https, or over http on this machine.
"""

from counterpane.peers.asking import HttpPeer, open_peer
from counterpane.peers.reading import read

__all__ = ["HttpPeer", "open_peer", "read"]
