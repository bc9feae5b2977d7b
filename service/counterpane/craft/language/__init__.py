"""A pattern in another language: messages with places for values, and the way from an English sentence to them.

The English pattern is written first and stays as it is. Each of its sentences is found again among the messages, which
are English sentences with named places ("Cast on {n} sts."), its values are taken out, and the message is said in the
other language with them; rows are read and said again from their tree. What no message fits stays in English, is marked
as English, and is counted. Messages and vocabulary are data that is passed in.
"""

from counterpane.craft.language.messages import ENGLISH, Language, Message
from counterpane.craft.language.telling import IN_ENGLISH, Telling, Told
from counterpane.craft.language.values import placeholders

__all__ = ["ENGLISH", "IN_ENGLISH", "Language", "Message", "Telling", "Told", "placeholders"]
