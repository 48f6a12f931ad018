// The rows: name = key, value, unit, believable range, stricter way, how known, source.
limits! {
    /// Least hold at 134 °C
    Hold134 = "hold_134_s", 180.0, "s", 30.0 .. 86_400.0, Greater, Seen, CSC;
    /// Least hold at 132 °C
    Hold132 = "hold_132_s", 240.0, "s", 30.0 .. 86_400.0, Greater, Seen, CSC;
    /// Least hold at 126 °C, where a programme says so
    Hold126 = "hold_126_s", 600.0, "s", 30.0 .. 86_400.0, Greater, Seen, CSC;
    /// Least hold at 121 °C
    Hold121 = "hold_121_s", 900.0, "s", 30.0 .. 86_400.0, Greater, Seen, CSC;
    /// Least hold from 132 °C on for wrapped goods without forced air removal
    WrappedGravity132 = "wrapped_gravity_132_s", 900.0, "s", 30.0 .. 86_400.0, Greater, Seen, CDC7;
    /// Least hold from 121 °C on for wrapped goods without forced air removal
    WrappedGravity121 = "wrapped_gravity_121_s", 1800.0, "s", 30.0 .. 86_400.0, Greater, Seen, CDC7;
    /// Does the manual allow pouches without forced air removal: 1 yes, 0 no or not known
    GravityPouches = "gravity_pouches", 0.0, "", 0.0 .. 1.0, AsTheMachineSays, Seen,
        "a cycle without forced air removal is for unwrapped solid goods (EN 13060 type N, overview of the draft) unless the machine's manual says more";
    /// Vacuum pulses that a pouched or hollow load asks for
    DeepPulses = "deep_pulses", 3.0, "", 1.0 .. 20.0, Greater, Ours,
        "common practice of fractionated vacuum, no source";
    /// Absolute pressure that each of those pulses has to reach
    DeepPulse = "deep_pulse_kpa", 20.0, "kPa", 1.0 .. 60.0, Smaller, Ours,
        "common practice of fractionated vacuum, no source";
    /// Width of the band above the set temperature
    Band = "band_k", 3.0, "K", 0.5 .. 5.0, AsTheMachineSays, FromMemory,
        "EN 285:2015 8.3.1 and HTM 2010: set temperature to +3 K; EN 13060 is remembered with +4 K";
    /// Measured and saturation temperature differ by no more than this over the hold
    Saturation = "saturation_k", 2.0, "K", 0.3 .. 5.0, Smaller, FromMemory,
        "EN 285:2015 8.3.1, EN 13060:2014 5.3: 2 K during the holding time";
    /// From this difference on a hold that is too short by pressure leaves the matter open
    Suspect = "suspect_k", 0.8, "K", 0.1 .. 2.0, Smaller, Ours, TEST_RULES;
    /// By pressure the set temperature counts as reached this much below it
    PressureSlack = "pressure_slack_k", 0.3, "K", 0.0 .. 0.3, Smaller, Ours, TEST_RULES;
    /// Share of the saturation pressure of the set temperature that a hold needs
    SteamGate = "steam_gate", 0.8, "", 0.5 .. 1.0, Greater, Ours, TEST_RULES;
    /// An interval without samples longer than this, and than the next, breaks a hold
    Gap = "gap_s", 60.0, "s", 1.0 .. 60.0, Smaller, Ours, TEST_RULES;
    /// The same in usual steps
    GapSteps = "gap_steps", 6.0, "", 2.0 .. 6.0, Smaller, Ours, TEST_RULES;
    /// Fewest samples of a hold; and no two lie further apart than half the least hold
    HoldSamples = "hold_samples", 4.0, "", 3.0 .. 1_000.0, Greater, Ours,
        "fewer show where the chamber was, not where it stayed; no source";
    /// A hold short by no more than this many usual steps leaves the matter open
    BorderSteps = "border_steps", 2.0, "", 0.0 .. 10.0, AsTheMachineSays, Ours, TEST_RULES;
    /// Beginning of the hold that the steady part leaves out
    Settle = "settle_s", 15.0, "s", 0.0 .. 60.0, AsTheMachineSays, FromMemory,
        "equilibration of at most 15 s up to 800 L: EN 285:2015 8.3.1.2, EN 13060:2014 4.6.4";
    /// Rise of pressure in a leak test
    Leak = "leak_kpa_per_min", 0.13, "kPa/min", 0.01 .. 1.0, Smaller, Seen,
        "HTM 2010 / EN 285: 1.3 mbar a minute, as quoted at pharmapathway.com; 13 mbar in 10 min at thermalcompliance.co.uk";
    /// Least measuring time of a leak test
    LeakTime = "leak_time_s", 300.0, "s", 60.0 .. 3600.0, Greater, Ours,
        "usual is 10 min after 5 min of settling (thermalcompliance.co.uk, seen); less than half of it shows too little";
    /// Leak in the first vacuum hold from which air removal is not shown
    VacuumLeak = "vacuum_leak_kpa_per_min", 10.0, "kPa/min", 0.1 .. 10.0, Smaller, Ours, TEST_RULES;
    /// A pump that levels off above this has drawn no vacuum
    Stalled = "stalled_kpa", 20.0, "kPa", 5.0 .. 20.0, Smaller, Ours,
        "common practice of fractionated vacuum, no source";
    /// Pressure below this share of the air pressure is a vacuum
    VacuumShare = "vacuum_share", 0.8, "", 0.3 .. 0.95, AsTheMachineSays, Ours,
        "a word for telling pulses apart; no source";
    /// Heat-up after vacuum pulses that is slow where no history is known
    SlowHeatUp = "slow_heat_up_s", 150.0, "s", 10.0 .. 3600.0, AsTheMachineSays, Ours,
        "a note for upkeep, assumed from the made-up machines";
    /// Air inlet that is slow where no history is known
    SlowAirIn = "slow_air_in_s", 90.0, "s", 5.0 .. 3600.0, AsTheMachineSays, Ours,
        "a note for upkeep, assumed from the made-up machines";
    /// Times the machine's usual from which either is slow
    SlowShare = "slow_share", 1.5, "", 1.1 .. 5.0, AsTheMachineSays, Ours,
        "a note for upkeep, assumed from the made-up machines";
}
