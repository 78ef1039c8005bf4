"""What is settled before anything is decided: looms in work, firm bookings, pilots; and how it is taken out."""
