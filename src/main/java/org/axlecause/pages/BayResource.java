package org.axlecause.pages;

import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.function.Function;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.ReadSites;
import org.axlecause.access.Role;
import org.axlecause.shared.Page;
import org.axlecause.shared.SeeOther;
import org.jspecify.annotations.Nullable;

/** Pages of the bay: open a case, measure, look, work and prove the cure. */
@Page
@Path("/bay")
@Produces(MediaType.TEXT_HTML)
public class BayResource {

    static final String SECTION = "bay";
    private static final String SOURCE = "/pages/bay";
    private static final List<String> IN_THE_BAY = List.of("open", "in-work", "to-verify", "scoped");

    private final ListCases listCases;
    private final ShowCase showCase;
    private final SendEntries sendEntries;
    private final ReadSites readSites;
    private final Frames frames;
    private final Forms forms;
    private final CurrentActor current;

    BayResource(
            ListCases listCases,
            ShowCase showCase,
            SendEntries sendEntries,
            ReadSites readSites,
            Frames frames,
            Forms forms,
            CurrentActor current) {
        this.listCases = listCases;
        this.showCase = showCase;
        this.sendEntries = sendEntries;
        this.readSites = readSites;
        this.frames = frames;
        this.forms = forms;
        this.current = current;
    }

    @GET
    @Needs
    public String cases(@QueryParam("q") @Nullable String words) {
        return Pages.bay(frames.of(SECTION), listCases.groups(IN_THE_BAY, words, current.get()))
                .render();
    }

    @GET
    @Path("/new")
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public String begin(@QueryParam("reference") @Nullable String reference) {
        return Pages.bayNew(
                        frames.of(SECTION),
                        readSites.visible(current.get()),
                        reference == null ? "" : reference.strip())
                .render();
    }

    @POST
    @Path("/new")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response open(MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        ReadEntries read = new ReadEntries(form);
        SendEntries.Entry presented = read.presented();
        String reference = read.reference();
        return send(reference, form, List.of(presented), "#readings");
    }

    @GET
    @Path("/{reference}")
    @Needs
    public String show(@PathParam("reference") String reference, @QueryParam("saved") @Nullable String saved) {
        return Pages.bayCase(frames.of(SECTION), showCase.show(reference, current.get()), saved)
                .render();
    }

    @GET
    @Path("/{reference}/obstacle")
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public String obstacles(@PathParam("reference") String reference, @QueryParam("step") @Nullable String step) {
        return Pages.bayObstacle(
                        frames.of(SECTION), showCase.inTheWay(reference, step == null ? "" : step, current.get()))
                .render();
    }

    @POST
    @Path("/{reference}/readings")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response readings(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        Form form = forms.received(fields);
        return send(reference, form, new ReadEntries(form).rollerTests(), "");
    }

    @POST
    @Path("/{reference}/answer")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response answer(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        return one(reference, fields, ReadEntries::answer, "#next");
    }

    @POST
    @Path("/{reference}/finding")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response finding(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        return one(reference, fields, ReadEntries::finding, "");
    }

    @POST
    @Path("/{reference}/obstacle")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response obstacle(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        return one(reference, fields, ReadEntries::obstacle, "#work");
    }

    @POST
    @Path("/{reference}/step")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Needs({Role.SENDER, Role.TECHNICIAN, Role.DESK})
    public Response step(@PathParam("reference") String reference, MultivaluedMap<String, String> fields) {
        return one(reference, fields, ReadEntries::step, "#work");
    }

    private Response one(
            String reference,
            MultivaluedMap<String, String> fields,
            Function<ReadEntries, SendEntries.Entry> entry,
            String where) {
        Form form = forms.received(fields);
        return send(reference, form, List.of(entry.apply(new ReadEntries(form))), where);
    }

    private Response send(String reference, Form form, List<SendEntries.Entry> entries, String where) {
        boolean fresh = sendEntries.send(form.sent(SOURCE, reference), entries, current.get());
        return SeeOther.to("/bay/" + reference + "?saved=" + (fresh ? "now" : "before") + where)
                .build();
    }
}
