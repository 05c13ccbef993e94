package org.conetender.app.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.adapter.socket.Answer;
import org.conetender.adapter.socket.TellClient;
import org.conetender.app.remote.RemoteSite;
import org.conetender.app.remote.TellMessages;
import org.conetender.core.face.Heard;
import org.conetender.core.face.TellLine;
import org.conetender.core.image.Ask;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code tell}: reports a hand step and waits until it is recorded. */
@Command(name = "tell", mixinStandardHelpOptions = true, sortOptions = false,
        description = "Reports a step at a cone and waits until it is recorded. Goes through the "
                + "broker where one is configured and can be reached, else through the daemon's socket "
                + "on this machine.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:accepted, and recorded for good",
            "1:refused, or done but not recorded; the sentence says which, and why",
            "2:the command was not understood",
            "3:no answer: see that the daemon runs, and look at the cone before you say it again"},
        footer = {"", "Examples:",
            "  conetender tell a started",
            "  conetender tell b filled litres=2 ppt=25",
            "  conetender tell b stocked lot=L-0417 cysts-g=2",
            "  conetender tell b withdraw           (takes the last report back)",
            "  conetender tell b withdraw stocked   (only if the last one was that)",
            "  conetender tell a count nauplii=41 umbrella=3 unhatched=12 sample-ml=1",
            "  conetender tell a weighed wet-g=9.5",
            "  conetender tell site tin lot=L-0417 cysts-g=425",
            "  conetender tell a usual lot=L-0418 cysts-g=2.5",
            "  conetender tell a setpoint 26.5",
            "  conetender tell a ready-by fri 07:30",
            "  conetender tell site alarms",
            "  conetender tell a acknowledge air-failed",
            "  conetender tell a shelve dry 8",
            "  conetender tell site away helper=neighbour",
            "  conetender tell site back",
            "  conetender tell a cleaned --broker mqtt://pi.local --site larkmoor", ""})
public final class TellCommand implements Callable<Integer> {

    private static final String OK = "ok ";
    private static final int REFUSED = 1;
    private static final int NO_ANSWER = 3;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "CONE", description = "id of the cone, or: site")
    private String cone;

    @Parameters(index = "1", paramLabel = "STEP",
            description = "such as started, filled, stocked, settle, drawing, drained, cleaned; or "
                    + "count, weighed, tin, usual, setpoint, ready-by, withdraw, acknowledge, shelve, "
                    + "alarms, away, back")
    private String step;

    @Parameters(index = "2..*", arity = "0..*", paramLabel = "NAME=VALUE",
            description = "the step's figures; of some words another word, as the examples show")
    private List<String> figures = new ArrayList<>();

    @Mixin
    private ConfigFile configFile;

    @Mixin
    private BrokerOptions brokerOptions;

    @Option(names = "--socket", paramLabel = "PATH",
            description = "go through this socket, whatever is configured")
    private Path socket;

    @Option(names = "--timeout", paramLabel = "S", defaultValue = "15",
            description = "wait at most so many seconds for the answer; default: ${DEFAULT-VALUE}")
    private int timeoutS;

    @Override
    public Integer call() {
        if (timeoutS < 1 || timeoutS > 600) {
            throw new ParameterException(spec.commandLine(), "--timeout " + timeoutS
                    + ": give 1 to 600 seconds.");
        }
        return switch (TellLine.read(words())) {
            case Heard.Refused(String sentence) -> end(CheckCommand.REFUSED, sentence);
            case Heard.Understood(String place, Ask ask) -> tell(place, ask);
        };
    }

    private String words() {
        List<String> all = new ArrayList<>(List.of(cone, step));
        all.addAll(figures);
        return String.join(" ", all);
    }

    private int tell(String place, Ask ask) {
        if (socket != null) {
            return throughSocket(socket);
        }
        Places.Found found = Places.find(spec.commandLine(), configFile, brokerOptions);
        if (found.refused()) {
            return CheckCommand.REFUSED;
        }
        RemoteSite site;
        try {
            site = found.broker().isEmpty() ? null : found.connect(new LinuxClock());
        } catch (IOException e) {
            if (found.socket().isEmpty()) {
                return end(NO_ANSWER, Places.broker(e.getMessage()));
            }
            spec.commandLine().getErr().println(Places.broker(e.getMessage()) + " Trying the local socket.");
            site = null;
        }
        // A daemon that lost its broker still listens at its socket.
        boolean near = site != null && found.socket().filter(Files::exists).isPresent()
                && site.state().filter("lost"::equals).isPresent();
        return site == null || near ? throughSocket(found.socket().orElseThrow())
                : throughBroker(site, place, ask);
    }

    private int throughBroker(RemoteSite site, String place, Ask ask) {
        try (site) {
            Optional<Integer> gone = absent(site, place);
            if (gone.isPresent()) {
                return gone.get();
            }
            if (ask instanceof Ask.Alarms) {
                String topic = site.names().cone(place) + (place.isEmpty() ? "/site/alarms" : "/hand/alarms");
                return end(0, site.topics().getOrDefault(topic, "The daemon shows no list of alarms."));
            }
            int code = 0;
            String last = "";
            for (TellMessages.Message m : TellMessages.of(ask)) {
                String topic = site.names().cone(place) + "/" + m.property() + "/set";
                Optional<String> line = site.ask(new Onlooker.Question(topic, m.payload(),
                        "tell-" + UUID.randomUUID(), timeoutS), timeoutS * 1_000L);
                Optional<String> ok = line.filter(l -> l.startsWith(OK));
                last = ok.orElse(last);
                code = Math.max(code, ok.isPresent() ? 0
                        : line.map(this::answered).orElseGet(() -> end(NO_ANSWER, "No answer within "
                        + timeoutS + " s; look at the cone before you say it again.")));
            }
            // Several figures are several messages; the last answer says all that holds by then.
            return last.isEmpty() ? code : Math.max(code, answered(last));
        } catch (IOException e) {
            return end(NO_ANSWER, Places.broker(e.getMessage())
                    + " Look at the cone before you say it again.");
        }
    }

    /** Why there is no point in asking. */
    private Optional<Integer> absent(RemoteSite site, String place) {
        String who = site.names().site();
        if (site.state().isEmpty()) {
            return Optional.of(end(NO_ANSWER, "No site '" + who
                    + "' is known at this broker: start its daemon, or "
                    + "name another site."));
        }
        if (!place.isEmpty() && !site.cones().contains(place)) {
            return Optional.of(end(REFUSED, "There is no cone '" + place + "' here; the cones are "
                    + String.join(", ", site.cones()) + "."));
        }
        String state = site.state().get();
        return state.equals("ready") || state.equals("init") ? Optional.empty()
                : Optional.of(end(NO_ANSWER, "The daemon of " + who + " is not there (" + state
                + "); start it: "
                        + "systemctl start conetender. Nothing was done."));
    }

    private int throughSocket(Path path) {
        try {
            Answer a = TellClient.tell(path, words(), Duration.ofSeconds(timeoutS));
            return switch (a.kind()) {
                case OK -> end(0, a.sentence());
                case REFUSED -> end(REFUSED, a.sentence());
                case UNKNOWN -> end(NO_ANSWER, a.sentence());
            };
        } catch (IOException e) {
            return end(NO_ANSWER, Places.sentence("The socket: " + e.getMessage()));
        }
    }

    /** The same line as the socket's. */
    private int answered(String line) {
        boolean ok = line.startsWith(OK);
        return end(ok ? 0 : REFUSED, line.substring(line.indexOf(' ') + 1));
    }

    private int end(int code, String sentence) {
        PrintWriter to = code == 0 ? spec.commandLine().getOut() : spec.commandLine().getErr();
        to.println(sentence);
        to.flush();
        return code;
    }
}
