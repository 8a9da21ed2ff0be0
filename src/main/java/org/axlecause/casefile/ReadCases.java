package org.axlecause.casefile;

import com.fasterxml.jackson.databind.node.ObjectNode;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Json;
import org.axlecause.shared.RefusedException;
import org.axlecause.shared.TenantTransaction;

/** Reads cases, their histories and past judgements for those who may see them. */
@ApplicationScoped
public class ReadCases {

    private static final int TAG_LENGTH = 32;

    private final TenantTransaction transaction;
    private final CaseStore cases;
    private final EventStore events;
    private final JudgementStore judgements;
    private final SiteStore sites;
    private final TombstoneStore tombstones;

    ReadCases(
            TenantTransaction transaction,
            CaseStore cases,
            EventStore events,
            JudgementStore judgements,
            SiteStore sites,
            TombstoneStore tombstones) {
        this.sites = sites;
        this.tombstones = tombstones;
        this.transaction = transaction;
        this.cases = cases;
        this.events = events;
        this.judgements = judgements;
    }

    /** The document of a case; refuses where there is none or the actor may not see its site. */
    public ServedCase find(String reference, Actor actor) {
        return transaction.call(actor.tenant(), () -> served(visible(reference, actor)));
    }

    /** A case as it is put on paper; refuses as {@link #find} does. */
    public CaseOnRecord onRecord(String reference, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            StoredCase found = visible(reference, actor);
            String code = found.columns().site();
            Site site = code == null ? null : sites.find(code).orElse(null);
            return new CaseOnRecord(
                    served(found),
                    site == null ? null : site.name(),
                    site == null ? ZoneOffset.UTC : site.zone(),
                    events.history(reference).stream().sorted(StoredEvent.ORDER).toList());
        });
    }

    /** The history of a case as it was received, latest arrival first. */
    List<StoredEvent> history(String reference, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            visible(reference, actor);
            return events.history(reference).stream()
                    .sorted((one, other) -> Integer.compare(other.position(), one.position()))
                    .toList();
        });
    }

    /** The judgements of a case that people acted on, latest first. */
    List<PastJudgement> judgements(String reference, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            visible(reference, actor);
            List<PastJudgement> kept = new ArrayList<>(judgements.find(reference));
            Collections.reverse(kept);
            return List.copyOf(kept);
        });
    }

    /** A page of cases of the sites that the actor may see, newest first; refuses parameters that are wrong, all at once. */
    public CasePage list(CasesWanted wanted, Actor actor) {
        CaseQuery query = new CaseQuery();
        CaseFilter filter = query.filter(
                wanted.site(),
                wanted.status(),
                wanted.cause(),
                wanted.from(),
                wanted.to(),
                wanted.judging(),
                wanted.words(),
                actor);
        ListPosition after = query.position(wanted.cursor());
        int size = query.limit(wanted.limit());
        query.check();
        List<StoredCase> found = transaction.call(actor.tenant(), () -> cases.list(filter, after, size + 1));
        List<StoredCase> page = CaseQuery.page(found, size);
        if (found.size() == page.size()) {
            return new CasePage(page, null);
        }
        StoredCase last = page.get(size - 1);
        return new CasePage(page, new ListPosition(last.columns().opened(), last.reference()).cursor());
    }

    private StoredCase visible(String reference, Actor actor) {
        StoredCase found = cases.find(reference).orElseThrow(() -> isNotThere(reference, actor));
        String site = found.columns().site();
        if (site != null && !actor.maySee(site)) {
            throw RefusedException.notAllowed(
                    "The case " + reference + " belongs to a site that this key may not see.");
        }
        return found;
    }

    private RefusedException isNotThere(String reference, Actor actor) {
        return tombstones
                .find(reference)
                .filter(stone -> stone.site() == null || actor.maySee(stone.site()))
                .map(stone -> RefusedException.because(
                        RefusedException.Reason.GONE,
                        "The case " + reference + " was closed and was removed on " + stone.removedOn()
                                + ", when its time was over."))
                .orElseGet(() -> RefusedException.notFound("There is no case " + reference
                        + ". Check the reference: a case begins with the first entry that is accepted."));
    }

    private static ServedCase served(StoredCase found) {
        String json = json(found);
        String tag = found.columns().version() + "-"
                + sha256(found.policy() + "\n" + found.rulebook() + "\n" + json).substring(0, TAG_LENGTH);
        return new ServedCase(json, tag);
    }

    private static String json(StoredCase found) {
        String document = found.document();
        if (document == null) {
            ObjectNode unjudged = Json.mapper().createObjectNode();
            unjudged.put("reference", found.reference());
            unjudged.put("status", found.columns().status());
            unjudged.put("judging", found.judging().toString());
            return unjudged.toString();
        }
        return found.judging() == Judging.FAILED
                ? document.replaceFirst("\\{", "{\"judging\":\"" + Judging.FAILED + "\",")
                : document;
    }

    private static String sha256(String text) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("Every Java platform has SHA-256", e);
        }
    }
}
