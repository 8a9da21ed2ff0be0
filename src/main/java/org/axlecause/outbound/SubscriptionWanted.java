package org.axlecause.outbound;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

@Schema(name = "SubscriptionWanted", description = "A subscription as it is asked for.")
record SubscriptionWanted(
        @Schema(
                description = "Where events are posted to: https, port 443 or 8443, a host of the public internet.",
                examples = "https://hooks.example.org/axlecause")
        @Nullable
        String address,

        @Schema(description = "What it is for.", examples = "Workshop system of the chain") @Nullable
        String description,

        @Schema(
                description = "Types of the events that are wanted.",
                examples = "[\"org.axlecause.case.judged.v1\", \"org.axlecause.case.verified.v1\"]")
        @Nullable
        List<String> types,

        @Schema(description = "Codes of the only sites whose cases are told; left out for all.") @Nullable
        List<String> sites,

        @Schema(description = "active, which is also what it means to leave it out, or stopped.") @Nullable
        String state) {}
