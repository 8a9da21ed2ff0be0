package org.axlecause.catalogue;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.axlecause.diagnosis.Drives;
import org.axlecause.diagnosis.Level;
import org.axlecause.diagnosis.Reach;
import org.axlecause.diagnosis.Risk;
import org.axlecause.diagnosis.Trait;
import org.axlecause.diagnosis.WheelBrake;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Spot;
import org.axlecause.facts.StepCode;
import org.axlecause.facts.SymptomCode;
import org.axlecause.inference.Layer;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** What the catalogue's entries look like on the wire. */
final class Entries {

    private Entries() {}

    /** Something with a code of its own. */
    interface Entry {

        /** What the entry is found by. */
        @JsonIgnore
        String key();
    }

    @Schema(description = "A number of the trade that a workshop may tune, and how firmly it is known.")
    record KnownValue(
            BigDecimal value,
            @Nullable String unit,
            KnowledgeStanding standing,
            @Nullable String source) {}

    @Schema(description = "A code with its words.")
    record NamedCode(String code, String text) {}

    @Schema(description = "A part that findings, obstacles and checks speak about.")
    record CatalogueComponent(
            Component code,
            String text,

            @Schema(description = "Checks that look at it.") List<CheckCode> checks,

            @Schema(description = "What found on it is evidence.")
            List<NamedCode> findings,

            KnowledgeStanding standing,
            @Nullable String source)
            implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "A state in which a part is found.")
    record CatalogueCondition(
            Condition code,
            String text,
            KnowledgeStanding standing,
            @Nullable String source) implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "One thing that can come out of a check.")
    record CatalogueAnswer(
            String text,

            @Schema(description = "The finding of the cause model that it is.") @Nullable
            String finding,

            @Schema(description = "The symptom that it shows.") @Nullable
            SymptomCode symptom,

            @Nullable Component component,
            @Nullable Condition condition,

            @Schema(description = "What to measure with it.") @Nullable
            MeasuredQuantity measure,

            @Schema(description = "UCUM unit of the measured value.") @Nullable
            String unit) {}

    @Schema(
            description =
                    "A look or measurement. Place, minutes, access and risk are absent where it belongs to the work or to the"
                            + " proof after it and is never asked for to find a cause.")
    record CatalogueCheck(
            CheckCode code,
            String text,
            @Nullable Level at,

            @Schema(description = "Kind of wheel brake that it is for; absent: both.") @Nullable
            WheelBrake on,

            List<BrakeLayout> onlyBrakes,
            List<ParkingLayout> onlyParking,

            @Schema(description = "Symptom without which it has no sense.") @Nullable
            SymptomCode needsSymptom,

            @Schema(description = "Minutes on the spot.") @Nullable
            KnownValue minutes,

            @Schema(
                    description =
                            "0 on its wheels, 1 raised, 2 wheel off, 3 drum or calliper off, 4 hydraulics opened.")
            @Nullable
            Integer access,

            @Schema(description = "Harm it can do to parts.") @Nullable
            Risk risk,

            @Schema(description = "Kind of braking that it needs.") @Nullable
            Drives drives,

            @Nullable BrakeSystem rollerTest,
            List<CautionCode> cautions,
            List<CatalogueAnswer> answers,
            KnowledgeStanding standing,
            @Nullable String source)
            implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "What a cause shows or leaves, and how surely.")
    record CatalogueEvidence(
            String code,
            String text,

            @Schema(description = "true: a finding that it leaves; false: a symptom that it shows.")
            boolean finding,

            @Schema(description = "Where, seen from the cause.")
            Reach at,

            @Schema(description = "Share of cases in which it is there.")
            KnownValue strength) {}

    @Schema(description = "What a cause leads to.")
    record CatalogueEdge(String code, String text, Reach at) {}

    @Schema(description = "What a cause makes the scope.")
    record CatalogueScopeMark(
            ScopeAction action,
            ScopeItem item,
            ScopeExtent extent,
            @Nullable WheelBrake on) {}

    @Schema(description = "A cause, where it applies and what tells it.")
    record CatalogueCause(
            CauseCode code,
            String text,
            Level at,
            List<Spot> spots,

            @Schema(description = "Layouts of wheel brake that it needs; none: all.")
            List<BrakeLayout> brakes,

            @Schema(description = "Layouts of parking brake that it needs; none: all.")
            List<ParkingLayout> parking,

            @Schema(description = "What vehicle or axle must have.")
            List<Trait> only,

            @Schema(
                    description =
                            "How often it is behind a complaint, relative to the other causes, by kind and age of the"
                                    + " brake: drum-old, drum-young, disc-old, disc-young.")
            Map<String, KnownValue> weights,

            @Schema(description = "Share of cases that have it on both wheels of the axle.") @Nullable
            KnownValue bothSides,

            List<CatalogueEvidence> evidence,

            @Schema(description = "Lists of findings and circumstances that prove it together.")
            List<List<NamedCode>> provedBy,

            @Schema(description = "Lists of findings and circumstances that rule it out together.")
            List<List<NamedCode>> refutedBy,

            @Schema(description = "Causes that can't be at the same place.")
            List<CauseCode> excludes,

            @Schema(description = "Work after which it is likelier.")
            List<ScopeItem> likelierAfter,

            @Schema(description = "Whether something upstream must have brought it about.")
            boolean asksWhatIsUpstream,

            List<CatalogueEdge> leadsTo,
            List<CatalogueScopeMark> makesScope,
            KnowledgeStanding standing,
            String source)
            implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "What a figure or complaint shows; not yet a reason.")
    record CatalogueSymptom(
            SymptomCode code,
            String text,
            Level at,

            @Schema(description = "Chance that it shows although no cause of the model is there.") @Nullable
            KnownValue withoutCause,

            @Schema(description = "Symptom of single wheels that it sums up.") @Nullable
            SymptomCode eachWheel,

            @Schema(description = "Causes that show it.") List<CauseCode> causes,

            KnowledgeStanding standing,
            String source)
            implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "One statement of a regime as its file writes it.")
    record CatalogueRegimeValue(
            @Schema(description = "Part of the regime's file: imbalance, effort, masses, items, limits and so on.")
            String about,

            @Schema(description = "The statement with the conditions under which it holds.")
            JsonNode says,

            KnowledgeStanding standing,
            @Nullable String source) {}

    @Schema(description = "An inspection regime with its dated, sourced values.")
    record CatalogueRegime(
            String code,
            String text,

            @Schema(description = "Changes with any value of the regime.")
            String version,

            List<CatalogueRegimeValue> values)
            implements Entry {
        @Override
        public String key() {
            return code;
        }
    }

    @Schema(description = "A rule of the rule base.")
    record CatalogueRule(
            String id,
            Layer layer,

            @Schema(description = "When it holds, one sentence.")
            String text,

            @Schema(description = "Why; completes: because ….")
            String reason,

            @Schema(description = "Document and section, or whose knowledge it is.")
            String source,

            @Schema(description = "First day it holds.") String since,

            @Schema(description = "Last day it holds.") @Nullable
            String until)
            implements Entry {
        @Override
        public String key() {
            return id;
        }
    }

    @Schema(description = "A caution and the steps that it belongs before.")
    record CatalogueCaution(
            CautionCode code,
            String text,
            List<StepCode> precedes,
            KnowledgeStanding standing,
            @Nullable String source) implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(description = "A step of work.")
    record CatalogueStep(
            StepCode code,
            String text,

            @Schema(description = "Scope lines that are done with it, as action and item.")
            List<String> does,

            @Schema(description = "Steps that come first where the plan has them.")
            List<StepCode> needs,

            @Schema(
                    description =
                            "Steps that must be done on the other side first, so that one side stays the pattern.")
            List<StepCode> keepsPattern,

            @Schema(description = "What must hold before the next step.")
            String verify,

            @Schema(description = "When to stop, and where to go then.") @Nullable
            String stop,

            @Schema(description = "Step that a failure leads back to.") @Nullable
            StepCode backTo,

            @Schema(description = "Tools and usual sizes, by common practice; the part itself decides.")
            List<String> tools,

            KnowledgeStanding standing,
            @Nullable String source)
            implements Entry {
        @Override
        public String key() {
            return code.toString();
        }
    }

    @Schema(
            description = "A value that belongs to no single code: how causes are weighed, how"
                    + " figures are read, and the thresholds and clauses of the policy that comes with the release.")
    record CatalogueSetting(
            String code,

            @Schema(description = "File of the rules folder that holds it.")
            String file,

            @Schema(description = "The value as its file writes it.")
            JsonNode says,

            KnowledgeStanding standing,
            @Nullable String source)
            implements Entry {
        @Override
        public String key() {
            return code;
        }
    }
}
