"""What a person reads: answers drawn as tables and sentences, one kind of answer a file."""
