package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.axlecause.access.PriceListStore;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.diagnosis.CauseWeights;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.Party;
import org.axlecause.facts.Policy;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.PriceList;
import org.axlecause.facts.Recorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.SiteTerms;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.inference.RuleBase;
import org.axlecause.judgement.Judge;
import org.axlecause.judgement.Judgement;
import org.axlecause.judgement.Matter;
import org.axlecause.judgement.PolicyChoice;
import org.axlecause.judgement.ShownCause;
import org.axlecause.judgement.WeightsChoice;
import org.jspecify.annotations.Nullable;

/** Judges a case from its whole history and keeps what follows, inside the transaction that has locked it. */
@ApplicationScoped
class JudgeCase implements CaseJudge {

    /**
     * Terms of a case whose site is not known yet; nothing that depends on them is concluded. Its currency is the code of
     * ISO 4217 for none.
     */
    private static final SiteTerms NO_SITE = new SiteTerms("", ZoneOffset.UTC, "XXX", "");

    private final HistoryStore histories;
    private final CaseStore cases;
    private final CountedCaseStore countedCases;
    private final JudgementStore judgements;
    private final SiteStore sites;
    private final PriceListStore priceLists;
    private final PolicyChoice policies;
    private final WeightsChoice weights;
    private final RuleBase rules;
    private final Judge judge;
    private final CaseWatch watch;
    private final Clock clock;

    JudgeCase(
            HistoryStore histories,
            CaseStore cases,
            CountedCaseStore countedCases,
            JudgementStore judgements,
            SiteStore sites,
            PriceListStore priceLists,
            PolicyChoice policies,
            WeightsChoice weights,
            RuleBase rules,
            Judge judge,
            CaseWatch watch,
            Clock clock) {
        this.histories = histories;
        this.cases = cases;
        this.countedCases = countedCases;
        this.judgements = judgements;
        this.sites = sites;
        this.priceLists = priceLists;
        this.policies = policies;
        this.weights = weights;
        this.rules = rules;
        this.judge = judge;
        this.watch = watch;
        this.clock = clock;
    }

    @Override
    public String judgeAndKeep(String reference) {
        StoredHistory stored = histories.find(reference);
        History history = new History(reference, Histories.read(stored.events(), stored.figures()));
        Matter matter = matter(history, null, stored.sites()::get);
        Judgement judgement = judge.judge(matter);
        CaseDocument document = CaseDocument.of(judgement, rules.version(), Histories.presentations(stored.events()));
        String text = document.text();
        DocumentDigest digest = DocumentDigest.of(document.members());
        LastJudgement last = stored.last();
        StoredSite site = stored.sites().get(matter.site().site());
        String judgedOf = JudgedOf.of(matter, site == null ? null : site.site(), rules.version());
        JudgedCase judged = judged(judgement, text, digest, judgedOf, history);
        OffsetDateTime now = OffsetDateTime.now(clock);
        cases.save(reference, judged, now);
        count(reference, matter, judgement, last);
        keepIfActedOn(reference, history, judgement, text, now);
        watch.judged(CaseChange.between(
                last == null ? DocumentDigest.NONE : last.digest(), judged.columns(), reference, digest));
        return text;
    }

    @Override
    public String judge(History history, Map<EntryId, JsonNode> data, @Nullable LocalDate asOf) {
        return CaseDocument.of(judge.judge(matter(history, asOf, this::site)), rules.version(), data)
                .text();
    }

    /** Counts a case that has ended, and counts one no more that was opened again. */
    private void count(String reference, Matter matter, Judgement judgement, @Nullable LastJudgement last) {
        VehiclePresented presented = presented(matter.history(), judgement);
        if (presented != null && CountCase.isEnded(judgement.status().toString())) {
            countedCases.save(
                    reference,
                    CountCase.of(
                            StatisticsTerms.released(),
                            judgement,
                            judge.progress(matter),
                            matter.history(),
                            presented,
                            matter.site().zone()));
        } else if (last != null && CountCase.isEnded(last.status())) {
            countedCases.save(reference, null);
        }
    }

    private static @Nullable VehiclePresented presented(History history, Judgement judgement) {
        return history.entries().stream()
                .filter(recorded -> recorded.id().equals(judgement.presentation()))
                .map(recorded -> (VehiclePresented) recorded.entry())
                .findFirst()
                .orElse(null);
    }

    private @Nullable StoredSite site(String code) {
        return sites.find(code)
                .map(site -> new StoredSite(site, priceLists.newestVersion(code).orElse(null)))
                .orElse(null);
    }

    private Matter matter(History history, @Nullable LocalDate asOf, Function<String, @Nullable StoredSite> known) {
        Recorded presented = Histories.standing(history.entries(), VehiclePresented.class).stream()
                .findFirst()
                .orElse(null);
        StoredSite stored = presented == null ? null : known.apply(((VehiclePresented) presented.entry()).site());
        Site site = stored == null ? null : stored.site();
        SiteTerms terms = site == null ? NO_SITE : site.terms();
        PriceList prices = stored == null ? null : priceList(stored, history);
        return new Matter(
                history,
                terms,
                policy(history, presented, site, asOf),
                weights(presented, terms.zone(), asOf),
                prices,
                asOf);
    }

    /** Those in force when the vehicle was presented, or at the end of the day that is asked for. */
    private CauseWeights weights(@Nullable Recorded presented, ZoneId zone, @Nullable LocalDate asOf) {
        if (presented == null) {
            return CauseWeights.BOOK;
        }
        return weights.at(
                asOf == null
                        ? presented.time()
                        : asOf.atTime(LocalTime.MAX).atZone(zone).toOffsetDateTime());
    }

    private Policy policy(
            History history, @Nullable Recorded presented, @Nullable Site site, @Nullable LocalDate asOf) {
        OffsetDateTime moment = (presented == null ? history.entries().get(0) : presented).time();
        LocalDate day = asOf == null
                ? moment.atZoneSameInstant(site == null ? ZoneOffset.UTC : site.zone())
                        .toLocalDate()
                : asOf;
        List<Recorded> adopted = Histories.standing(history.entries(), PolicyAdopted.class);
        return policies.policyFor(
                site == null ? null : site.site(),
                site == null ? null : site.region(),
                day,
                asOf == null ? moment : null,
                adopted.isEmpty()
                        ? null
                        : (PolicyAdopted) adopted.get(adopted.size() - 1).entry());
    }

    /** The list of the first customer decision, which fixes the prices; until then the newest. */
    private @Nullable PriceList priceList(StoredSite stored, History history) {
        String site = stored.site().site();
        Integer newest = stored.prices();
        if (newest == null) {
            return null;
        }
        return Histories.standing(history.entries(), ScopeDecided.class).stream()
                .filter(recorded -> ((ScopeDecided) recorded.entry())
                        .decisions().stream().map(LineDecision::by).anyMatch(Party.CUSTOMER::equals))
                .findFirst()
                .map(recorded -> priceLists.at(site, recorded.time()))
                .orElseGet(() -> priceLists.find(site, newest))
                .orElse(null);
    }

    private JudgedCase judged(
            Judgement judgement, String document, DocumentDigest digest, @Nullable String judgedOf, History history) {
        VehiclePresented presented = presented(history, judgement);
        return new JudgedCase(
                new CaseColumns(
                        judgement.site(),
                        judgement.status().toString(),
                        judgement.opened(),
                        judgement.openedDay(),
                        judgement.version(),
                        presented == null ? null : presented.vehicle().make(),
                        presented == null ? null : presented.vehicle().model()),
                document,
                digest.text(),
                judgement.policy().code() + " " + judgement.policy().version(),
                rules.version(),
                judgedOf,
                judgement.causes().stream()
                        .filter(cause -> cause.standing() != CauseStanding.RULED_OUT)
                        .map(ShownCause::code)
                        .collect(Collectors.toSet()),
                Objects.requireNonNullElse(judgement.departures(), List.of()));
    }

    /** Keeps the judgement that a decision or a closing was made on, as it stands right after it. */
    private void keepIfActedOn(
            String reference, History history, Judgement judgement, String document, OffsetDateTime now) {
        Map<PastJudgement.Occasion, Class<? extends Entry>> occasions = new HashMap<>();
        occasions.put(PastJudgement.Occasion.DECISION, ScopeDecided.class);
        occasions.put(PastJudgement.Occasion.CLOSING, CaseClosed.class);
        Recorded last = history.entries().get(history.entries().size() - 1);
        occasions.forEach((occasion, type) -> {
            if (type.isInstance(last.entry())) {
                judgements.save(
                        reference, new PastJudgement(judgement.version(), rules.version(), occasion, document, now));
            }
        });
    }
}
