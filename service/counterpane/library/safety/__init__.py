"""What is known of risks to a child: the rules' answer, measurements, lists of wards, where sources differ."""
